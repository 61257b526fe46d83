package cistern.finding;

import cistern.measurement.Interval;

/** What is known of a derived quantity. */
public sealed interface FindingValue {

  /** Nothing: an input is missing or cannot be used. */
  record None() implements FindingValue {}

  /**
   * A number.
   *
   * @param value in the finding's unit, not rounded
   */
  record Point(double value) implements FindingValue {}

  /**
   * An open interval, because an input is censored.
   *
   * @param lower the lower end
   * @param upper the upper end, infinite when unbounded
   */
  record Bounds(double lower, double upper) implements FindingValue {}

  /** The point or the bounds of an interval. */
  static FindingValue of(Interval interval) {
    return interval.censored()
        ? new Bounds(interval.lower(), interval.upper())
        : new Point(interval.exactly());
  }
}
