package cistern.report.look;

import java.util.Arrays;

/**
 * A colour as an eye takes it, for tests: contrast by WCAG 2.1, distance in CIE 1976 L*a*b* under
 * D65, colour deficiency by Machado, Oliveira and Fernandes 2009.
 *
 * @param red linear, 0 to 1
 * @param green linear, 0 to 1
 * @param blue linear, 0 to 1
 */
record Colour(double red, double green, double blue) {

  /**
   * What an eye without one kind of cone sees, severity 1.0 (doi 10.1109/TVCG.2009.113, table 1;
   * numbers from memory, held by the law that greys stay grey).
   */
  enum Deficiency {
    PROTANOPIA(
        "0.152286 1.052583 -0.204868 0.114503 0.786281 0.099216 -0.003882 -0.048116 1.051998"),
    DEUTERANOPIA(
        "0.367322 0.860646 -0.227968 0.280085 0.672501 0.047413 -0.011820 0.042940 0.968881"),
    TRITANOPIA(
        "1.255528 -0.076749 -0.178779 -0.078411 0.930809 0.147602 0.004733 0.691367 0.303900");

    private final String rows;

    Deficiency(String rows) {
      this.rows = rows;
    }

    private double row(int row, Colour c) {
      double[] m = Arrays.stream(rows.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();
      double sum = m[3 * row] * c.red + m[3 * row + 1] * c.green + m[3 * row + 2] * c.blue;
      return Math.clamp(sum, 0, 1);
    }
  }

  static Colour parse(String hex) {
    return new Colour(linear(hex, 1), linear(hex, 3), linear(hex, 5));
  }

  /** One channel, made linear (IEC 61966-2-1). */
  private static double linear(String hex, int at) {
    double c = Integer.parseInt(hex.substring(at, at + 2), 16) / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  double luminance() {
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }

  double contrast(Colour other) {
    double one = luminance() + 0.05;
    double two = other.luminance() + 0.05;
    return Math.max(one, two) / Math.min(one, two);
  }

  Colour seenWith(Deficiency deficiency) {
    return new Colour(deficiency.row(0, this), deficiency.row(1, this), deficiency.row(2, this));
  }

  double lightness() {
    return 116 * f(luminance()) - 16;
  }

  double distance(Colour other) {
    return Math.hypot(
        Math.hypot(lightness() - other.lightness(), a() - other.a()), b() - other.b());
  }

  private double a() {
    double x = (0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.95047;
    return 500 * (f(x) - f(luminance()));
  }

  private double b() {
    double z = (0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.08883;
    return 200 * (f(luminance()) - f(z));
  }

  private static double f(double t) {
    return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  }
}
