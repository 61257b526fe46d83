package cistern.puncture.procedure;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Clotting as measured.
 *
 * @param platelets 10*9/L
 * @param inr a ratio
 * @param apttRatio patient over control
 * @param at when the blood was taken
 */
public record Coagulation(
    OptionalDouble platelets,
    OptionalDouble inr,
    OptionalDouble apttRatio,
    Optional<OffsetDateTime> at) {

  /** Nothing measured. */
  public static final Coagulation UNKNOWN =
      new Coagulation(
          OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
}
