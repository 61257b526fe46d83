package cistern.puncture.procedure;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is known before the puncture.
 *
 * @param answers what was asked
 * @param times when it is planned and when the scan was
 * @param comaScore Glasgow coma scale, 3 to 15
 * @param anticoagulation bleeding and clotting
 * @param body what makes the way to the fluid long
 * @param needle the needle planned
 * @param order what is to be measured
 */
public record Before(
    ProcedureAnswers answers,
    Times times,
    OptionalInt comaScore,
    Anticoagulation anticoagulation,
    Body body,
    Needle needle,
    TestOrder order) {

  /** Nothing known. */
  public static final Before UNKNOWN =
      new Before(
          ProcedureAnswers.NONE,
          new Times(Optional.empty(), Optional.empty()),
          OptionalInt.empty(),
          Anticoagulation.UNKNOWN,
          new Body(OptionalDouble.empty(), OptionalDouble.empty()),
          Needle.UNKNOWN,
          TestOrder.UNKNOWN);

  /** The same with other answers. */
  public Before withAnswers(ProcedureAnswers other) {
    return new Before(other, times, comaScore, anticoagulation, body, needle, order);
  }

  /**
   * When.
   *
   * @param plannedAt the puncture
   * @param imagedAt the brain scan
   */
  public record Times(Optional<OffsetDateTime> plannedAt, Optional<OffsetDateTime> imagedAt) {}

  /**
   * What makes the way to the fluid long.
   *
   * @param bmi kg/m2
   * @param skinToCsfCm measured on images, cm
   */
  public record Body(OptionalDouble bmi, OptionalDouble skinToCsfCm) {}
}
