package cistern.differential;

import org.hipparchus.special.Gamma;

/**
 * What is believed of one rate: a beta distribution.
 *
 * @param a first shape, positive
 * @param b second shape, positive
 */
record Belief(double a, double b) {

  /** Before any count: Jeffreys. */
  static final double HALF = 0.5;

  /** The number of steps of the inversion. */
  private static final int STEPS = 400;

  /** How far the inversion reaches, in logits. */
  private static final double REACH = 40;

  /** The belief after a share was seen among an effective number. */
  static Belief of(double share, double effective) {
    return new Belief(HALF + share * effective, HALF + (1 - share) * effective);
  }

  double mean() {
    return a / (a + b);
  }

  /** How many persons it weighs. */
  double effective() {
    return a + b - 2 * HALF;
  }

  /** The same mean with no more weight than some effective number. */
  Belief withAtMost(double effective) {
    double part = (effective + 2 * HALF) / (a + b);
    return effective() <= effective ? this : new Belief(a * part, b * part);
  }

  /**
   * The quantiles at (k + ½)/n for k from 0 to n − 1, by the trapezoidal rule on the logit, where a
   * beta density falls off exponentially at both ends.
   */
  double[] quantiles(int n) {
    double mode = Math.log(a / b);
    double width = Math.min(REACH, REACH / 4 * Math.sqrt(1 / a + 1 / b));
    double from = mode - width / Math.min(1, a);
    double step = (width / Math.min(1, a) + width / Math.min(1, b)) / STEPS;
    double[] below = new double[STEPS + 1];
    double norm = Gamma.logGamma(a + b) - Gamma.logGamma(a) - Gamma.logGamma(b);
    double before = density(from, norm);
    for (int i = 1; i <= STEPS; i++) {
      double here = density(from + i * step, norm);
      below[i] = below[i - 1] + (before + here) / 2 * step;
      before = here;
    }
    return inverted(below, from, step, n);
  }

  private double density(double logit, double norm) {
    double logP = -Math.log1p(Math.exp(-logit));
    double logQ = -Math.log1p(Math.exp(logit));
    return Math.exp(norm + a * logP + b * logQ);
  }

  private static double[] inverted(double[] below, double from, double step, int n) {
    double[] quantiles = new double[n];
    int i = 1;
    for (int k = 0; k < n; k++) {
      double wanted = (k + HALF) / n * below[STEPS];
      while (i < STEPS && below[i] < wanted) {
        i++;
      }
      double gap = below[i] - below[i - 1];
      double part = gap > 0 ? (wanted - below[i - 1]) / gap : 0;
      quantiles[k] = 1 / (1 + Math.exp(-(from + (i - 1 + part) * step)));
    }
    return quantiles;
  }
}
