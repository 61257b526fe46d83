package cistern.gel.bands;

/** Small systems of normal equations. */
final class LeastSquares {
  private LeastSquares() {}

  /**
   * The solution of a symmetric positive system by elimination.
   *
   * @param a n rows of n coefficients and the right side; overwritten
   */
  static double[] solve(double[][] a) {
    int n = a.length;
    for (int p = 0; p < n; p++) {
      for (int r = p + 1; r < n; r++) {
        double f = a[r][p] / a[p][p];
        for (int s = p; s <= n; s++) {
          a[r][s] -= f * a[p][s];
        }
      }
    }
    double[] x = new double[n];
    for (int p = n - 1; p >= 0; p--) {
      double v = a[p][n];
      for (int s = p + 1; s < n; s++) {
        v -= a[p][s] * x[s];
      }
      x[p] = v / a[p][p];
    }
    return x;
  }
}
