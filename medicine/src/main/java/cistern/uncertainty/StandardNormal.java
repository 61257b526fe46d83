package cistern.uncertainty;

import org.hipparchus.special.Erf;

/**
 * The standard normal distribution. Its distribution function is interpolated in a table by cubic
 * Hermite polynomials, off by less than 1e-10 everywhere.
 */
final class StandardNormal {

  /** Beyond this many standard deviations nothing is left that a double beside 1 can hold. */
  static final double REACH = 8.25;

  private static final int PER_UNIT = 64;
  private static final int POINTS = (int) (2 * REACH * PER_UNIT) + 2;
  private static final double SQRT_2 = Math.sqrt(2);
  private static final double SQRT_2_PI = Math.sqrt(2 * Math.PI);

  /** Value and slope (per step of the table) of the distribution function, alternating. */
  private static final double[] TABLE = table();

  private StandardNormal() {}

  private static double[] table() {
    double[] table = new double[2 * POINTS];
    for (int i = 0; i < POINTS; i++) {
      double z = i / (double) PER_UNIT - REACH;
      table[2 * i] = Erf.erfc(-z / SQRT_2) / 2;
      table[2 * i + 1] = density(z) / PER_UNIT;
    }
    return table;
  }

  /** The density at z. */
  static double density(double z) {
    return Math.exp(-z * z / 2) / SQRT_2_PI;
  }

  /** The chance of a value under z, which may be infinite. */
  static double below(double z) {
    if (z >= REACH) {
      return 1;
    }
    if (z <= -REACH) {
      return 0;
    }
    double at = (z + REACH) * PER_UNIT;
    int i = (int) at;
    double f = at - i;
    double low = TABLE[2 * i];
    double slope = TABLE[2 * i + 1];
    double rise = TABLE[2 * i + 2] - low;
    double end = TABLE[2 * i + 3];
    return low + f * (slope + f * (3 * rise - 2 * slope - end + f * (slope + end - 2 * rise)));
  }

  /**
   * The chance that a normal variable with a mean this far above a point lies above it.
   *
   * @param distance mean minus point
   * @param sigma standard deviation, not negative; with 0 the variable is its mean
   */
  static double above(double distance, double sigma) {
    if (sigma > 0) {
      return below(distance / sigma);
    }
    return distance > 0 ? 1 : 0;
  }

  /** The z under which a share p of all values lies, kept within the reach. */
  static double quantile(double p) {
    if (p <= 0) {
      return -REACH;
    }
    return p >= 1 ? REACH : Math.clamp(-SQRT_2 * Erf.erfcInv(2 * p), -REACH, REACH);
  }
}
