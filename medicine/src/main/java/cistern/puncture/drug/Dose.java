package cistern.puncture.drug;

import java.util.OptionalDouble;

/**
 * A dose as typed.
 *
 * @param amount of one dose
 * @param times a day, 0.5 for every other day; empty when not said
 * @param route by which it is given
 * @param isAsNeeded whether it is taken only when needed, so that only the time of the last counts
 */
public record Dose(Amount amount, OptionalDouble times, Route route, boolean isAsNeeded) {

  /** Nothing typed. */
  public static final Dose UNKNOWN =
      new Dose(Amount.UNKNOWN, OptionalDouble.empty(), Route.UNKNOWN, false);

  /** How a drug is given. */
  public enum Route {
    VEIN,
    SKIN,
    UNKNOWN
  }

  /** The unit of an amount. */
  public enum Unit {
    MILLIGRAM,
    MILLILITRE,
    INTERNATIONAL_UNIT,
    /** A bare number, as on the label. */
    NONE
  }

  /**
   * An amount.
   *
   * @param value in the unit
   * @param unit as typed, grams as milligrams
   * @param isPerKg whether it is meant for each kilogram
   */
  public record Amount(OptionalDouble value, Unit unit, boolean isPerKg) {
    /** None typed. */
    public static final Amount UNKNOWN = new Amount(OptionalDouble.empty(), Unit.NONE, false);
  }

  /** What is typed here, filled up with what is typed elsewhere. */
  public Dose or(Dose other) {
    return new Dose(
        amount.value().isPresent() ? amount : other.amount,
        times.isPresent() ? times : other.times,
        route == Route.UNKNOWN ? other.route : route,
        isAsNeeded || other.isAsNeeded);
  }
}
