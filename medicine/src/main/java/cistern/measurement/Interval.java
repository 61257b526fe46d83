package cistern.measurement;

/**
 * A number known exactly, or an open interval that contains it.
 *
 * @param lower the lower end
 * @param upper the upper end, possibly infinite
 * @param censored whether the number is only known to lie between the ends, which are then open
 */
public record Interval(double lower, double upper, boolean censored) {

  /** Checks the order of the ends; an exact number has equal ends. */
  public Interval {
    if (Double.isNaN(lower) || Double.isNaN(upper) || lower > upper) {
      throw new IllegalArgumentException("the ends of an interval are ordered numbers");
    }
    if (!censored && lower != upper) {
      throw new IllegalArgumentException("an exact number has equal ends");
    }
  }

  /** A number known exactly. */
  public static Interval of(double value) {
    return new Interval(value, value, false);
  }

  /** Below the limit of quantitation: no number is put in its place. */
  public static Interval below(double limit) {
    return new Interval(0, limit, true);
  }

  /** Above the measuring range. */
  public static Interval above(double limit) {
    return new Interval(limit, Double.POSITIVE_INFINITY, true);
  }

  /** What lies between two ends: the number itself where they meet. */
  public static Interval between(double lower, double upper) {
    return new Interval(lower, upper, lower != upper);
  }

  /**
   * This divided by a positive divisor. Rises with this, falls with the divisor; an open end at
   * zero or infinity gives the limit of the quotient there.
   */
  public Interval dividedBy(Interval divisor) {
    double low = lower == 0 ? 0 : lower / divisor.upper;
    double high = upper == 0 ? 0 : upper / divisor.lower;
    return new Interval(low, high, censored || divisor.censored);
  }

  /** This multiplied by a number that is not negative. */
  public Interval times(double factor) {
    return new Interval(lower * factor, upper * factor, censored);
  }

  /** Whether the number is known to be zero. */
  public boolean isZero() {
    return upper == 0;
  }

  /** Whether the number itself is known. */
  public boolean isExact() {
    return !censored;
  }

  /** The number, when it is known exactly. */
  public double exactly() {
    if (censored) {
      throw new IllegalStateException("only an interval is known");
    }
    return lower;
  }
}
