package cistern.panel;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The person, as far as the numbers depend on them.
 *
 * @param id a local identifier, if given
 * @param ageYears age in years, not negative, if given or known from the days
 * @param ageDays age in days, if given as such
 * @param sex as given
 * @param body weight and kidneys, for the clearance of drugs
 */
public record Person(
    Optional<String> id,
    OptionalDouble ageYears,
    OptionalDouble ageDays,
    Optional<String> sex,
    Body body) {

  /** The days of a year (UCUM: {@code a_j}). */
  public static final double DAYS_IN_YEAR = 365.25;

  /** A person of whom nothing is known. */
  public static final Person UNKNOWN =
      new Person(Optional.empty(), OptionalDouble.empty(), Optional.empty());

  /** A person whose age is given in years. */
  public Person(Optional<String> id, OptionalDouble ageYears, Optional<String> sex) {
    this(id, ageYears, OptionalDouble.empty(), sex, Body.UNKNOWN);
  }

  /** A person of some age. */
  public static Person aged(double years) {
    return new Person(Optional.empty(), OptionalDouble.of(years), Optional.empty());
  }

  /** The age in days: as given, else from the years. */
  public OptionalDouble days() {
    return ageDays.isPresent() || ageYears.isEmpty()
        ? ageDays
        : OptionalDouble.of(ageYears.getAsDouble() * DAYS_IN_YEAR);
  }

  /**
   * What the clearance of drugs depends on.
   *
   * @param weightKg actual weight, kg
   * @param creatinine in serum
   */
  public record Body(OptionalDouble weightKg, Optional<Creatinine> creatinine) {
    /** Nothing is known. */
    public static final Body UNKNOWN = new Body(OptionalDouble.empty(), Optional.empty());
  }

  /**
   * Creatinine in serum.
   *
   * @param micromolPerL µmol/L
   * @param at when the blood was taken
   */
  public record Creatinine(double micromolPerL, Optional<OffsetDateTime> at) {}
}
