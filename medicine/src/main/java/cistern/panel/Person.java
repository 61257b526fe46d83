package cistern.panel;

import cistern.measurement.Answer;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The person, as far as the numbers depend on them.
 *
 * @param id a local identifier, if given
 * @param ageYears age in years, not negative, if given or known from the days
 * @param infant what matters in the first months of life
 * @param sex as given
 * @param body weight and kidneys, for the clearance of drugs
 */
public record Person(
    Optional<String> id, OptionalDouble ageYears, Infant infant, Optional<String> sex, Body body) {

  /** The days of a year (UCUM: {@code a_j}). */
  public static final double DAYS_IN_YEAR = 365.25;

  /** A person of whom nothing is known. */
  public static final Person UNKNOWN =
      new Person(Optional.empty(), OptionalDouble.empty(), Optional.empty());

  /** A person whose age is given in years. */
  public Person(Optional<String> id, OptionalDouble ageYears, Optional<String> sex) {
    this(id, ageYears, Infant.UNKNOWN, sex, Body.UNKNOWN);
  }

  /** A person of some age. */
  public static Person aged(double years) {
    return new Person(Optional.empty(), OptionalDouble.of(years), Optional.empty());
  }

  /** The age in days: as given, else from the years. */
  public OptionalDouble days() {
    return infant.ageDays().isPresent() || ageYears.isEmpty()
        ? infant.ageDays()
        : OptionalDouble.of(ageYears.getAsDouble() * DAYS_IN_YEAR);
  }

  /**
   * What matters in the first months of life.
   *
   * @param ageDays age in days, if given as such
   * @param preterm whether born before term
   * @param intensiveCare whether in intensive care
   */
  public record Infant(OptionalDouble ageDays, Answer preterm, Answer intensiveCare) {
    /** Nothing is said. */
    public static final Infant UNKNOWN =
        new Infant(OptionalDouble.empty(), Answer.UNKNOWN, Answer.UNKNOWN);
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
