package cistern.puncture.procedure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What was done.
 *
 * @param answers what was asked
 * @param operator who did it, as given
 * @param level the interspace, as given
 * @param attempts how many
 * @param position during the pressure reading
 * @param openingPressure cm[H2O]
 * @param needle the needle used
 * @param complications as given
 */
public record Done(
    ProcedureAnswers answers,
    Optional<String> operator,
    Optional<String> level,
    OptionalInt attempts,
    Position position,
    OptionalDouble openingPressure,
    Needle needle,
    List<String> complications) {

  /** Nothing recorded. */
  public static final Done UNKNOWN =
      new Done(
          ProcedureAnswers.NONE,
          Optional.empty(),
          Optional.empty(),
          OptionalInt.empty(),
          Position.UNKNOWN,
          OptionalDouble.empty(),
          Needle.UNKNOWN,
          List.of());

  /** The same in another position. */
  public Done withPosition(Position other) {
    return new Done(
        answers, operator, level, attempts, other, openingPressure, needle, complications);
  }

  /** Copies the complications. */
  public Done {
    complications = List.copyOf(complications);
  }
}
