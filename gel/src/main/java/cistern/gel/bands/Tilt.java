package cistern.gel.bands;

import java.util.List;

/**
 * The slope of the bands as a smooth function of the column over the whole gel, a parabola fitted
 * to the lanes' bends; its integral tells by how much a band lies lower in one lane than in
 * another.
 */
public final class Tilt {
  private final double[] c;
  private final double centre;
  private final double scale;

  private Tilt(double[] c, double centre, double scale) {
    this.c = c;
    this.centre = centre;
    this.scale = scale;
  }

  /**
   * @param columns the lanes' middles
   */
  static Tilt of(List<Double> columns, List<Bend> bends, double width) {
    double centre = width / 2;
    double scale = width / 2;
    double[] weights = bends.stream().mapToDouble(b -> Math.min(b.weight(), 1)).toArray();
    double[] c = {0, 0, 0};
    for (int round = 0; round < 5; round++) {
      c = fit(columns, bends, weights, centre, scale);
      for (int i = 0; i < weights.length; i++) {
        double x = (columns.get(i) - centre) / scale;
        double off = (bends.get(i).slope() - (c[0] + x * (c[1] + x * c[2]))) / 0.01;
        weights[i] = Math.min(bends.get(i).weight(), 1) / (1 + off * off);
      }
    }
    return new Tilt(c, centre, scale);
  }

  private static double[] fit(
      List<Double> columns, List<Bend> bends, double[] weights, double centre, double scale) {
    double[][] a = new double[3][4];
    for (int i = 0; i < weights.length; i++) {
      double x = (columns.get(i) - centre) / scale;
      double[] p = {1, x, x * x};
      for (int r = 0; r < 3; r++) {
        for (int s = 0; s < 3; s++) {
          a[r][s] += weights[i] * p[r] * p[s];
        }
        a[r][3] += weights[i] * p[r] * bends.get(i).slope();
      }
    }
    double[] ridge = {0.02, 0.1, 0.4};
    for (int r = 0; r < 3; r++) {
      a[r][r] += ridge[r];
    }
    return LeastSquares.solve(a);
  }

  /** Rows per column at a column. */
  public double slopeAt(double column) {
    double x = (column - centre) / scale;
    return c[0] + x * (c[1] + x * c[2]);
  }

  /** By how many rows a band lies lower at one column than at another. */
  public double drop(double from, double to) {
    return integral(to) - integral(from);
  }

  private double integral(double column) {
    double x = (column - centre) / scale;
    return scale * x * (c[0] + x * (c[1] / 2 + x * c[2] / 3));
  }
}
