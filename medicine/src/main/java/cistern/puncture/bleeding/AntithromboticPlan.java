package cistern.puncture.bleeding;

import cistern.puncture.procedure.Antithrombotic;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One antithrombotic against every guideline, side by side.
 *
 * @param taken the drug as taken
 * @param hours from the last dose to the planned puncture, when known and not negative
 * @param answers one a guideline, never averaged
 * @param disagree whether the guidelines that answer do not agree
 */
public record AntithromboticPlan(
    Antithrombotic taken, OptionalDouble hours, List<GuidelineAnswer> answers, boolean disagree) {

  /** Copies the answers. */
  public AntithromboticPlan {
    answers = List.copyOf(answers);
  }

  /** What the guidelines amount to: not passed for any that says so, asked while any asks. */
  public HoldVerdict together() {
    if (answers.stream().anyMatch(a -> a.verdict() == HoldVerdict.NOT_PASSED)) {
      return HoldVerdict.NOT_PASSED;
    }
    boolean isOpen =
        answers.stream().anyMatch(a -> a.isRead() && a.verdict() == HoldVerdict.ASK)
            || answers.stream().noneMatch(a -> a.verdict() == HoldVerdict.PASSED);
    return isOpen ? HoldVerdict.ASK : HoldVerdict.PASSED;
  }

  /**
   * When every interval that was read has passed; empty when a guideline needs more than hours, or
   * the time of the last dose is not known.
   */
  public Optional<OffsetDateTime> passedAt() {
    boolean isByHours =
        answers.stream()
            .filter(GuidelineAnswer::isRead)
            .allMatch(a -> a.hold().isPresent() && !waitsForMore(a));
    OptionalDouble longest =
        answers.stream()
            .filter(GuidelineAnswer::isRead)
            .flatMap(a -> a.hold().stream())
            .mapToDouble(Hours::most)
            .max();
    return isByHours && longest.isPresent()
        ? taken.lastDoseAt().map(at -> at.plusSeconds(Math.round(longest.getAsDouble() * 3600)))
        : Optional.empty();
  }

  /** Whether the hours have passed and something else is still asked for. */
  private boolean waitsForMore(GuidelineAnswer answer) {
    return answer.verdict() != HoldVerdict.PASSED
        && hours.isPresent()
        && hours.getAsDouble() >= answer.hold().map(Hours::most).orElse(0.0);
  }
}
