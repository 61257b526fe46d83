package cistern.gel.synthetic;

/** A plane projective map from the picture to the sheet, 3×3 row by row, and back. */
final class Pose {
  private final double[] m;

  Pose(double[] m) {
    this.m = m;
  }

  double[] m() {
    return m;
  }

  static Pose identity() {
    return new Pose(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1});
  }

  /** Rotation by an angle and scale about a centre, then a projective lean. */
  static Pose of(double radians, double scale, double[] lean, double[] centre) {
    double c = Math.cos(radians) / scale;
    double s = Math.sin(radians) / scale;
    double cx = centre[0];
    double cy = centre[1];
    double[] turn = {c, s, -c * cx - s * cy, -s, c, s * cx - c * cy, lean[0], lean[1], 1};
    turn[8] = 1 - lean[0] * cx - lean[1] * cy;
    double[] back = {1, 0, cx, 0, 1, cy, 0, 0, 1};
    return new Pose(product(back, turn));
  }

  Pose inverse() {
    double a = m[0], b = m[1], c = m[2], d = m[3], e = m[4], f = m[5], g = m[6], h = m[7], i = m[8];
    return new Pose(
        new double[] {
          e * i - f * h, c * h - b * i, b * f - c * e,
          f * g - d * i, a * i - c * g, c * d - a * f,
          d * h - e * g, b * g - a * h, a * e - b * d
        });
  }

  double x(double px, double py) {
    return (m[0] * px + m[1] * py + m[2]) / (m[6] * px + m[7] * py + m[8]);
  }

  double y(double px, double py) {
    return (m[3] * px + m[4] * py + m[5]) / (m[6] * px + m[7] * py + m[8]);
  }

  private static double[] product(double[] p, double[] q) {
    double[] r = new double[9];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        for (int k = 0; k < 3; k++) {
          r[3 * i + j] += p[3 * i + k] * q[3 * k + j];
        }
      }
    }
    return r;
  }
}
