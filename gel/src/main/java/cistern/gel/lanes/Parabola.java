package cistern.gel.lanes;

/** A parabola or straight line through evenly spaced values, by weighted least squares. */
final class Parabola {
  private Parabola() {}

  /** Its coefficients, the constant first. */
  static double[] fit(double[] values, double[] weights, boolean isBent) {
    int terms = isBent ? 3 : 2;
    double[][] a = new double[terms][terms + 1];
    for (int i = 0; i < values.length; i++) {
      double t = scaled(i);
      for (int r = 0; r < terms; r++) {
        for (int c = 0; c < terms; c++) {
          a[r][c] += weights[i] * weights[i] * Math.pow(t, r + c);
        }
        a[r][terms] += weights[i] * weights[i] * values[i] * Math.pow(t, r);
      }
    }
    return solved(a);
  }

  private static double scaled(int i) {
    return (i - 4) / 8.0;
  }

  /** Its value at an index. */
  static double at(double[] coefficients, int i) {
    double value = 0;
    for (int k = 0; k < coefficients.length; k++) {
      value += coefficients[k] * Math.pow(scaled(i), k);
    }
    return value;
  }

  /** Elimination: the matrix is symmetric and positive. */
  private static double[] solved(double[][] a) {
    int n = a.length;
    for (int p = 0; p < n; p++) {
      for (int r = 0; r < n; r++) {
        if (r != p) {
          double f = a[r][p] / a[p][p];
          for (int c = p; c <= n; c++) {
            a[r][c] -= f * a[p][c];
          }
        }
      }
    }
    double[] x = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = a[i][n] / a[i][i];
    }
    return x;
  }
}
