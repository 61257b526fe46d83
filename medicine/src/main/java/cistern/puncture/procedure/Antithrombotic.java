package cistern.puncture.procedure;

import cistern.measurement.Answer;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An antithrombotic that the person takes.
 *
 * @param name as given
 * @param doseClass low, high or unknown
 * @param lastDoseAt when the last dose was taken
 * @param hoursSinceLastDose hours from the last dose to the planned puncture, as stated
 * @param level what was measured of the drug in blood
 */
public record Antithrombotic(
    String name,
    DoseClass doseClass,
    Optional<OffsetDateTime> lastDoseAt,
    OptionalDouble hoursSinceLastDose,
    Level level) {

  private static final double MILLIS_PER_HOUR = 3_600_000;

  /**
   * What was measured of a drug in blood.
   *
   * @param nanogramsPerMl drug level, ng/mL
   * @param antiXa anti-factor-Xa activity, [IU]/mL
   * @param thrombinTimeNormal whether the thrombin time is normal
   */
  public record Level(
      OptionalDouble nanogramsPerMl, OptionalDouble antiXa, Answer thrombinTimeNormal) {
    /** Nothing measured. */
    public static final Level UNKNOWN =
        new Level(OptionalDouble.empty(), OptionalDouble.empty(), Answer.UNKNOWN);
  }

  /** The drug, if it is one that a guideline speaks of. */
  public Optional<Drug> drug() {
    return Drug.parse(name);
  }

  /**
   * Hours from the last dose to the planned puncture: from the two times when both are known, else
   * as stated. Negative when the dose is given as later than the puncture.
   */
  public OptionalDouble hoursBefore(Optional<OffsetDateTime> plannedAt) {
    if (lastDoseAt.isPresent() && plannedAt.isPresent()) {
      long millis = java.time.Duration.between(lastDoseAt.get(), plannedAt.get()).toMillis();
      return OptionalDouble.of(millis / MILLIS_PER_HOUR);
    }
    return hoursSinceLastDose;
  }
}
