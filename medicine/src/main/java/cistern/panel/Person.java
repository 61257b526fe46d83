package cistern.panel;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The person, as far as the numbers depend on them.
 *
 * @param id a local identifier, if given
 * @param ageYears age in years, not negative, if given
 * @param sex as given
 */
public record Person(Optional<String> id, OptionalDouble ageYears, Optional<String> sex) {

  /** A person of whom nothing is known. */
  public static final Person UNKNOWN =
      new Person(Optional.empty(), OptionalDouble.empty(), Optional.empty());

  /** A person of some age. */
  public static Person aged(double years) {
    return new Person(Optional.empty(), OptionalDouble.of(years), Optional.empty());
  }
}
