package cistern.uncertainty;

import java.util.function.DoubleUnaryOperator;

/**
 * Finds a quantile of a continuous distribution: secant steps on the probit scale, where a
 * distribution that is nearly normal is nearly a straight line, kept inside a bracket.
 */
final class Quantile {

  private static final double ENOUGH = 1e-6;
  private static final double HAIR = 1e-12;
  private static final int MOST_STEPS = 80;

  private final DoubleUnaryOperator chanceOver;
  private final double target;
  private double lower = Double.NEGATIVE_INFINITY;
  private double upper = Double.POSITIVE_INFINITY;
  private double stride;

  private Quantile(DoubleUnaryOperator chanceOver, double p, double scale) {
    this.chanceOver = chanceOver;
    this.target = StandardNormal.quantile(p);
    this.stride = scale;
  }

  /**
   * The value under which the chance is p.
   *
   * @param chanceOver the falling chance to lie over a value
   * @param p 0 to 1 exclusive
   * @param middle a first guess of the median
   * @param scale a first guess of the standard deviation, positive
   */
  static double of(DoubleUnaryOperator chanceOver, double p, double middle, double scale) {
    return new Quantile(chanceOver, p, scale).from(middle);
  }

  private double from(double middle) {
    double x = middle + target * stride;
    double slope = 1 / stride;
    double error = errorAt(x);
    for (int step = 0; step < MOST_STEPS && Math.abs(error) > ENOUGH && !isNarrow(); step++) {
      double next = within(x, x - error / slope);
      double nextError = errorAt(next);
      double secant = (nextError - error) / (next - x);
      slope = secant > 0 ? secant : slope / 2;
      x = next;
      error = nextError;
    }
    return x;
  }

  /** How far a value is above the quantile, in standard deviations; narrows the bracket. */
  private double errorAt(double x) {
    double error = -StandardNormal.quantile(chanceOver.applyAsDouble(x)) - target;
    if (error > 0) {
      upper = Math.min(upper, x);
    } else {
      lower = Math.max(lower, x);
    }
    return error;
  }

  private double within(double x, double proposed) {
    if (Double.isInfinite(lower) || Double.isInfinite(upper)) {
      double reach = stride;
      stride *= 2;
      return Math.clamp(proposed, x - reach, x + reach);
    }
    boolean isInside = proposed > lower && proposed < upper;
    return isInside ? proposed : lower + (upper - lower) / 2;
  }

  private boolean isNarrow() {
    return !Double.isInfinite(upper - lower)
        && upper - lower <= HAIR * Math.max(Math.abs(lower), Math.abs(upper));
  }
}
