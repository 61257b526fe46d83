package cistern.puncture.procedure;

import cistern.measurement.Answer;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An antithrombotic that the person takes.
 *
 * @param name as given
 * @param dose as given, if in a field of its own
 * @param doseClass low, high or unknown
 * @param lastDoseAt when the last dose was taken; the end of the day when only that is known
 * @param hoursSinceLastDose hours from the last dose to the planned puncture, as stated
 * @param level what was measured of the drug in blood
 */
public record Antithrombotic(
    String name,
    Optional<String> dose,
    DoseClass doseClass,
    Optional<OffsetDateTime> lastDoseAt,
    OptionalDouble hoursSinceLastDose,
    Level level) {

  private static final double MILLIS_PER_HOUR = 3_600_000;

  /** One whose dose is not typed. */
  public Antithrombotic(
      String name,
      DoseClass doseClass,
      Optional<OffsetDateTime> lastDoseAt,
      OptionalDouble hoursSinceLastDose,
      Level level) {
    this(name, Optional.empty(), doseClass, lastDoseAt, hoursSinceLastDose, level);
  }

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

  /** The same under its international name and with the class of its dose. */
  public Antithrombotic recognised(String international, DoseClass known) {
    return new Antithrombotic(international, dose, known, lastDoseAt, hoursSinceLastDose, level);
  }

  /**
   * Hours from the last dose to a time: from the two times when both are known, else as stated.
   * Negative when the dose is given as later.
   */
  public OptionalDouble hoursBefore(Optional<OffsetDateTime> plannedAt) {
    if (lastDoseAt.isPresent() && plannedAt.isPresent()) {
      long millis = Duration.between(lastDoseAt.get(), plannedAt.get()).toMillis();
      return OptionalDouble.of(millis / MILLIS_PER_HOUR);
    }
    return hoursSinceLastDose;
  }
}
