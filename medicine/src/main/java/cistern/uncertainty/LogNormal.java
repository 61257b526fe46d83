package cistern.uncertainty;

/**
 * A quantity that is not negative and whose logarithm is normally distributed.
 *
 * @param median the measured value, or what follows from measured values
 * @param mu the logarithm of the median, −∞ for zero
 * @param sigma the standard deviation of the logarithm; 0 for a number known exactly
 */
record LogNormal(double median, double mu, double sigma) implements Spread {

  /** One, exactly. */
  static final LogNormal ONE = new LogNormal(1, 0, 0);

  /** A measured value whose logarithm has this standard deviation; a measured zero is exact. */
  static LogNormal of(double value, double sigma) {
    return new LogNormal(value, Math.log(value), value == 0 ? 0 : sigma);
  }

  /** The standard deviation of the logarithm, √ln(1 + cv²). */
  static double sigma(double cv) {
    return Math.sqrt(Math.log1p(cv * cv));
  }

  /** This over another, both independent. */
  LogNormal over(LogNormal divisor) {
    return new LogNormal(median / divisor.median, mu - divisor.mu, pooled(sigma, divisor.sigma));
  }

  /** This times another, both independent. */
  LogNormal times(LogNormal other) {
    return new LogNormal(median * other.median, mu + other.mu, pooled(sigma, other.sigma));
  }

  /** This times a number. */
  LogNormal times(double factor) {
    return of(median * factor, sigma);
  }

  /** What another measurement of the same sample would give, seen from this one. */
  LogNormal repeated() {
    return new LogNormal(median, mu, sigma * Math.sqrt(2));
  }

  private static double pooled(double one, double other) {
    return Math.sqrt(one * one + other * other);
  }

  /** The value at z standard deviations of the logarithm. */
  double at(double z) {
    return sigma == 0 ? median : median * Math.exp(sigma * z);
  }

  @Override
  public double chanceOver(double value) {
    if (sigma == 0) {
      return median > value ? 1 : 0;
    }
    return value <= 0 ? 1 : StandardNormal.below((mu - Math.log(value)) / sigma);
  }

  /** The chance that the quantity lies between two values, the upper of which may be infinite. */
  double chanceBetween(double lower, double upper) {
    return Math.max(0, chanceOver(lower) - (Double.isInfinite(upper) ? 0 : chanceOver(upper)));
  }

  @Override
  public double quantile(double p) {
    return at(StandardNormal.quantile(p));
  }
}
