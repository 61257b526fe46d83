package cistern.gel.bands;

/**
 * Weights that give the value or a derivative, at the middle of an odd number of evenly spaced
 * values, of the polynomial that fits them best by least squares.
 *
 * <p>Source: A. Savitzky, M. J. E. Golay, Anal Chem 1964;36:1627; errata J. Steinier et al., Anal
 * Chem 1972;44:1906.
 */
final class SavitzkyGolay {
  private SavitzkyGolay() {}

  /**
   * The weights, from the first value to the last.
   *
   * @param reach values on either side of the middle
   * @param degree of the polynomial, at most twice the reach
   * @param derivative 0 for the value, 1 for the slope per step, 2 for the curvature
   */
  static double[] weights(int reach, int degree, int derivative) {
    double[] weights = new double[2 * reach + 1];
    for (int i = -reach; i <= reach; i++) {
      double[][] normal = new double[degree + 1][degree + 2];
      for (int r = 0; r <= degree; r++) {
        for (int c = 0; c <= degree; c++) {
          normal[r][c] = sumOfPowers(reach, r + c);
        }
        normal[r][degree + 1] = Math.pow(i, r);
      }
      double factorial = derivative == 2 ? 2 : 1;
      weights[i + reach] = factorial * LeastSquares.solve(normal)[derivative];
    }
    return weights;
  }

  private static double sumOfPowers(int reach, int power) {
    double sum = 0;
    for (int i = -reach; i <= reach; i++) {
      sum += Math.pow(i, power);
    }
    return sum;
  }
}
