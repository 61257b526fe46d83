package cistern.cohort;

import cistern.bands.BandReport;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.interpretation.Judged;
import cistern.interpretation.PuncturePlanning;
import cistern.measurement.Answer;
import cistern.panel.Pairing;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.Question;
import cistern.puncture.specimen.CriticalValue;
import cistern.puncture.specimen.Outstanding;
import cistern.puncture.specimen.Outstanding.State;
import cistern.puncture.specimen.Results;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What a clinic counts of its own punctures; what nobody recorded is unknown, never no. */
public enum QualityFigure {
  PAIR_APART("pair-apart", "serum drawn too long before or after the CSF"),
  BLOODY("bloody", "more erythrocytes in the CSF than the limit"),
  SHORT_VOLUME("short-volume", "less CSF than is asked for"),
  SEVERAL_ATTEMPTS("several-attempts", "more than one attempt"),
  HEADACHE("headache", "headache afterwards"),
  PATCHED("patched", "a blood patch"),
  CRITICAL_LATE("critical-late", "a critical value told late, or to nobody"),
  RESULT_LATE("result-late", "a result later than it was due"),
  AMENDED("amended", "a result corrected after it was sent"),
  GEL_UNCONFIRMED("gel-unconfirmed", "a gel read by the program and confirmed by nobody");

  private final String code;
  private final String text;

  QualityFigure(String code, String text) {
    this.code = code;
    this.text = text;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** What is counted, in words. */
  public String text() {
    return text;
  }

  /** Whether it happened in one puncture. */
  Answer of(Judged judged, Recorded recorded, Facts facts) {
    After after = judged.workup().procedure().after();
    return switch (this) {
      case PAIR_APART -> apart(judged.puncture().panel().pairing().verdict());
      case BLOODY ->
          switch (judged.puncture().findings().verdict(FindingCode.ERYTHROCYTES)) {
            case ABOVE -> Answer.YES;
            case WITHIN, BELOW, BORDERLINE -> Answer.NO;
            case UNDETERMINED -> Answer.UNKNOWN;
          };
      case SHORT_VOLUME -> {
        OptionalDouble volume = judged.workup().panel().csf().volumeMl();
        yield volume.isEmpty()
            ? Answer.UNKNOWN
            : answer(volume.getAsDouble() < facts.number("cohort.volume.lower"));
      }
      case SEVERAL_ATTEMPTS -> {
        OptionalInt attempts = judged.workup().procedure().done().attempts();
        yield attempts.isEmpty() ? Answer.UNKNOWN : answer(attempts.getAsInt() > 1);
      }
      case HEADACHE -> headache(after).present();
      case PATCHED ->
          headache(after).present() == Answer.NO
              ? Answer.NO
              : headache(after).answers().answer(Question.PATCHED);
      case CRITICAL_LATE -> criticalLate(after, judged, facts);
      case RESULT_LATE -> resultLate(after, facts);
      case AMENDED -> recorded.isAmended();
      case GEL_UNCONFIRMED -> unconfirmed(judged.workup().bands());
    };
  }

  private static Answer answer(boolean isSo) {
    return isSo ? Answer.YES : Answer.NO;
  }

  private static Answer apart(Pairing.Verdict pairing) {
    return switch (pairing) {
      case VALID -> Answer.NO;
      case DOUBTFUL, INVALID -> Answer.YES;
      case UNKNOWN -> Answer.UNKNOWN;
    };
  }

  private static HeadacheRecord headache(After after) {
    return after.headache().orElse(HeadacheRecord.UNKNOWN);
  }

  /** Of the punctures with a critical value: whether nobody was told of one in time. */
  private static Answer criticalLate(After after, Judged judged, Facts facts) {
    List<CriticalValue> critical =
        Results.of(facts).critical(after, PuncturePlanning.draw(judged.workup().panel()));
    if (critical.isEmpty()) {
      return Answer.UNKNOWN;
    }
    double limit = facts.number("critical.told-minutes");
    boolean isInTime =
        critical.stream()
            .allMatch(
                value ->
                    after.sent().stream()
                        .filter(sent -> sent.test() == value.test())
                        .flatMap(sent -> QualityAmount.toldMinutes(sent).stream().boxed())
                        .anyMatch(minutes -> minutes <= limit));
    return answer(!isInTime);
  }

  private static Answer resultLate(After after, Facts facts) {
    List<Outstanding> all = Results.of(facts).outstanding(after);
    boolean isLate = false;
    boolean isKnown = false;
    for (int i = 0; i < all.size(); i++) {
      Outstanding one = all.get(i);
      var received = after.sent().get(i).receivedAt();
      boolean isDue = one.dueAt().isPresent();
      isKnown |= isDue && (received.isPresent() || one.state() == State.OVERDUE);
      isLate |=
          one.state() == State.OVERDUE
              || (isDue && received.isPresent() && received.get().isAfter(one.dueAt().get()));
    }
    return isKnown ? answer(isLate) : Answer.UNKNOWN;
  }

  private static Answer unconfirmed(BandReport report) {
    return switch (report) {
      case BandReport.ReadFromGel gel -> answer(gel.confirmedBy().isEmpty());
      case BandReport.Counted counted -> counted.gel().isPresent() ? Answer.NO : Answer.UNKNOWN;
      case BandReport.GelNamed named -> Answer.UNKNOWN;
      case BandReport.NotReported none -> Answer.UNKNOWN;
      case BandReport.Patterned patterned -> Answer.UNKNOWN;
      case BandReport.Concluded concluded -> Answer.UNKNOWN;
    };
  }
}
