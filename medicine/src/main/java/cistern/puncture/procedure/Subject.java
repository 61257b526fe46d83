package cistern.puncture.procedure;

import cistern.measurement.Answer;
import cistern.measurement.Interval;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The person and the draw, as far as a plan depends on them.
 *
 * @param ageYears not negative
 * @param sex as given
 * @param pregnancy whether pregnant
 * @param headacheDisorder whether one is known from elsewhere in the work-up
 * @param draw the puncture as recorded
 */
public record Subject(
    OptionalDouble ageYears,
    Optional<String> sex,
    Answer pregnancy,
    Answer headacheDisorder,
    Draw draw) {

  /** Somebody of whom nothing is known. */
  public static final Subject UNKNOWN =
      new Subject(
          OptionalDouble.empty(), Optional.empty(), Answer.UNKNOWN, Answer.UNKNOWN, Draw.UNKNOWN);

  /** Whether female, when stated. */
  public Answer female() {
    if (sex.isEmpty()) {
      return Answer.UNKNOWN;
    }
    return switch (sex.get()) {
      case "female" -> Answer.YES;
      case "male" -> Answer.NO;
      default -> Answer.UNKNOWN;
    };
  }

  /**
   * The puncture as recorded.
   *
   * @param at when
   * @param volumeMl how much, mL
   * @param csfGlucose mmol/L
   * @param csfLeukocytes per µL
   */
  public record Draw(
      Optional<OffsetDateTime> at,
      OptionalDouble volumeMl,
      Optional<Interval> csfGlucose,
      Optional<Interval> csfLeukocytes) {
    /** Nothing recorded. */
    public static final Draw UNKNOWN =
        new Draw(Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty());
  }
}
