package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.bands.BandReport.Counted;
import cistern.bands.BandReport.Origin;
import cistern.bands.BandReport.ReadFromGel;
import cistern.bands.BandVerdict;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.After.SentTest;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.Question;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What one invented puncture gives to a cohort. */
class CohortMemberTest {

  private static final Facts FACTS = Facts.standard();
  private static final Interpreter INTERPRETER = Interpreter.of(FACTS);
  private static final OffsetDateTime NINE = OffsetDateTime.parse("2034-03-06T09:00:00+01:00");

  private static Panel panel(double glucose) {
    return Panel.of(
        Person.aged(40),
        List.of(
            of(Sample.csf(Analyte.ALBUMIN), 200),
            of(Sample.serum(Analyte.ALBUMIN), 40_000),
            of(Sample.csf(Analyte.ERYTHROCYTES), 4_000),
            of(Sample.csf(Analyte.GLUCOSE), glucose)));
  }

  private static Measurement of(Sample sample, double value) {
    return Measurement.of(sample, Interval.of(value));
  }

  private static CohortMember member(Panel panel, BandReport bands, Procedure procedure) {
    return CohortMember.of(
        INTERPRETER.judge(new Workup("invented", panel, bands, List.of()).withProcedure(procedure)),
        Recorded.NOTHING,
        FACTS);
  }

  private static Procedure after(Optional<HeadacheRecord> headache, List<SentTest> sent) {
    Done done =
        new Done(
            ProcedureAnswers.NONE,
            Optional.empty(),
            Optional.empty(),
            OptionalInt.of(3),
            Position.UNKNOWN,
            OptionalDouble.empty(),
            new Needle(Needle.Tip.CUTTING, OptionalInt.of(20)),
            List.of());
    return new Procedure(
        Procedure.UNKNOWN.before(),
        done,
        new After(Optional.of(NINE.plusDays(30)), headache, sent, Optional.empty()));
  }

  private static SentTest sent(CsfTest test, int receivedMinutes, List<Told> told) {
    return new SentTest(
        test,
        Optional.of(NINE),
        Optional.of(NINE.plusHours(2)),
        receivedMinutes < 0 ? Optional.empty() : Optional.of(NINE.plusMinutes(receivedMinutes)),
        Answer.UNKNOWN,
        told);
  }

  private static HeadacheRecord headache(Answer present, ProcedureAnswers answers) {
    return new HeadacheRecord(
        present, answers, Map.of(), Optional.empty(), Optional.empty(), List.of());
  }

  private static Answer quality(CohortMember member, QualityFigure figure) {
    return member.quality().getOrDefault(figure, Answer.UNKNOWN);
  }

  @Test
  void of_nothingRecorded_isUnknownAndNeverNo() {
    CohortMember bare =
        member(
            Panel.of(Person.UNKNOWN, List.of()), new BandReport.NotReported(), Procedure.UNKNOWN);

    assertThat(bare.quality())
        .hasSize(QualityFigure.values().length)
        .allSatisfy((figure, answer) -> assertThat(answer).isEqualTo(Answer.UNKNOWN));
    assertThat(bare.amounts()).isEmpty();
    assertThat(bare.values()).isEmpty();
    assertThat(bare.month()).isEmpty();
    assertThat(bare.needle()).isEqualTo("unknown");
    assertThat(bare.foretold()).isEmpty();
  }

  @Test
  void of_aDescribedPuncture_countsAndMeasuresIt() {
    Draw csf =
        new Draw(
            Optional.of(NINE),
            Optional.of(NINE.plusMinutes(45)),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.of(4));
    HeadacheRecord headache =
        headache(Answer.YES, new ProcedureAnswers(Map.of(Question.PATCHED, Answer.YES)));
    CohortMember member =
        member(
            panel(3).withDraws(csf, Draw.at(NINE.minusHours(200))),
            new BandReport.NotReported(),
            after(Optional.of(headache), List.of(sent(CsfTest.CELLS, 180, List.of()))));

    assertThat(member.quality())
        .containsEntry(QualityFigure.PAIR_APART, Answer.YES)
        .containsEntry(QualityFigure.BLOODY, Answer.YES)
        .containsEntry(QualityFigure.SHORT_VOLUME, Answer.YES)
        .containsEntry(QualityFigure.SEVERAL_ATTEMPTS, Answer.YES)
        .containsEntry(QualityFigure.HEADACHE, Answer.YES)
        .containsEntry(QualityFigure.PATCHED, Answer.YES)
        .containsEntry(QualityFigure.RESULT_LATE, Answer.YES)
        .containsEntry(QualityFigure.CRITICAL_LATE, Answer.UNKNOWN);
    assertThat(member.amounts())
        .containsEntry(QualityAmount.DRAW_INTERVAL, 200.0)
        .containsEntry(QualityAmount.VOLUME, 4.0)
        .containsEntry(QualityAmount.TO_LABORATORY, 0.75)
        .containsEntry(QualityAmount.TURNAROUND, 3.0)
        .doesNotContainKey(QualityAmount.TOLD);
    assertThat(member.values()).containsEntry(FindingCode.ALBUMIN_QUOTIENT, 200.0 / 40_000);
    assertThat(member.month()).contains(YearMonth.of(2034, 3));
    assertThat(member.needle()).isEqualTo("cutting 20G");
  }

  @Test
  void of_noHeadache_wasNotPatchedEither() {
    HeadacheRecord none = headache(Answer.NO, ProcedureAnswers.NONE);
    CohortMember member =
        member(panel(3), new BandReport.NotReported(), after(Optional.of(none), List.of()));

    assertThat(quality(member, QualityFigure.HEADACHE)).isEqualTo(Answer.NO);
    assertThat(quality(member, QualityFigure.PATCHED)).isEqualTo(Answer.NO);
  }

  /** A glucose of 1 mmol/L is on the critical list; 30 minutes are the limit of telling. */
  @ParameterizedTest
  @CsvSource({
    "1, 30, NO, 30",
    "1, 31, YES, 31",
    "1, -1, YES, ",
    "1, -61, YES, ",
    "3, 30, UNKNOWN, 30",
  })
  void criticalLate_toldAfter_isLateOverTheLimit(
      double glucose, int toldAfter, Answer expected, Double told) {
    List<Told> all =
        toldAfter == -1
            ? List.of()
            : List.of(new Told("ward", Optional.of(NINE.plusMinutes(60 + toldAfter))));
    CohortMember member =
        member(
            panel(glucose),
            new BandReport.NotReported(),
            after(Optional.empty(), List.of(sent(CsfTest.CHEMISTRY, 60, all))));

    assertThat(quality(member, QualityFigure.CRITICAL_LATE)).isEqualTo(expected);
    assertThat(member.amounts().get(QualityAmount.TOLD)).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource({"120, NO", "121, YES", "-1, YES"})
  void resultLate_dueInTwoHours_isLateAfterThem(int received, Answer expected) {
    CohortMember member =
        member(
            panel(3),
            new BandReport.NotReported(),
            after(Optional.empty(), List.of(sent(CsfTest.CELLS, received, List.of()))));

    assertThat(quality(member, QualityFigure.RESULT_LATE)).isEqualTo(expected);
  }

  @Test
  void gel_readByTheProgram_isTheSecondReadingOfAPersonsCounts() {
    ReadFromGel read =
        new ReadFromGel(
            "gel.png",
            BandCounts.of(0, 0, 0),
            Optional.of(BandPattern.NORMAL),
            OptionalDouble.of(0.01),
            List.of(0.99, 0.01),
            Optional.empty());
    Counted counted =
        new Counted(BandCounts.of(6, 0, 0), Optional.empty(), Origin.UNKNOWN, Optional.of(read));

    CohortMember unconfirmed = member(panel(3), read, Procedure.UNKNOWN);
    CohortMember edited = member(panel(3), counted, Procedure.UNKNOWN);

    assertThat(quality(unconfirmed, QualityFigure.GEL_UNCONFIRMED)).isEqualTo(Answer.YES);
    assertThat(quality(edited, QualityFigure.GEL_UNCONFIRMED)).isEqualTo(Answer.NO);
    assertThat(edited.gel().bands()).isEqualTo(BandVerdict.POSITIVE);
    assertThat(edited.gel().other()).contains(BandVerdict.NEGATIVE);
  }
}
