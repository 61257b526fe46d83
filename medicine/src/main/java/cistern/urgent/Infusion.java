package cistern.urgent;

import cistern.bedside.Treatment;
import cistern.bedside.TreatmentKind;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Optional;

/** Whether antibody of donors, or the lack of the person's own, can be in the serum. */
final class Infusion {

  private static final String WINDOW = "stop.immunoglobulin.days.to";
  private static final String EXCHANGE_WINDOW = "stop.plasma-exchange.days.to";
  private static final String HIGH_IGG = "stop.serum-igg.over";

  private Infusion() {}

  /** Immunoglobulin within its window, or not asked and the serum looks like it. */
  static Answer of(Observed observed) {
    Answer stated = stated(observed);
    if (stated.isKnown()) {
      return stated;
    }
    boolean isLike =
        observed.verdict(FindingCode.IGG_QUOTIENT) == Verdict.BELOW
            || observed
                .results()
                .find(Sample.serum(Analyte.IGG))
                .filter(m -> !observed.panel().suspected().contains(m.sample()))
                .filter(m -> m.value().lower() > observed.facts().number(HIGH_IGG))
                .isPresent();
    return isLike ? Answer.YES : Answer.UNKNOWN;
  }

  /** Immunoglobulin within its window, as far as it was said. */
  static Answer stated(Observed observed) {
    return within(
        observed,
        Circumstance.IMMUNOGLOBULIN_INFUSION,
        TreatmentKind.IMMUNOGLOBULIN,
        observed.facts().number(WINDOW));
  }

  /** Plasma exchange within its window. */
  static Answer exchange(Observed observed) {
    return within(
        observed,
        Circumstance.PLASMA_EXCHANGE,
        TreatmentKind.PLASMA_EXCHANGE,
        observed.facts().number(EXCHANGE_WINDOW));
  }

  private static Answer within(
      Observed observed, Circumstance circumstance, TreatmentKind kind, double days) {
    Optional<OffsetDateTime> drawn = observed.results().csf().at();
    boolean isGiven =
        observed.bedside().treatments().stream()
            .filter(t -> t.is(kind))
            .filter(t -> t.isBefore(drawn))
            .anyMatch(t -> isRecent(last(t), drawn, days));
    if (isGiven) {
      return Answer.YES;
    }
    Answer said = observed.results().answer(circumstance);
    Optional<OffsetDateTime> at = Optional.ofNullable(observed.results().dated().get(circumstance));
    return said.isYes() && !isRecent(at, drawn, days) ? Answer.NO : said;
  }

  private static Optional<OffsetDateTime> last(Treatment treatment) {
    return treatment.to().or(treatment::from);
  }

  /** An unknown time may be recent. */
  private static boolean isRecent(
      Optional<OffsetDateTime> at, Optional<OffsetDateTime> drawn, double days) {
    if (at.isEmpty() || drawn.isEmpty()) {
      return true;
    }
    double hours = days * Duration.ofDays(1).toHours();
    return Duration.between(at.get(), drawn.get()).toHours() <= hours;
  }
}
