package cistern.cohort;

import java.util.ArrayList;
import java.util.List;

/**
 * The curve of sensitivity against the share of false alarms, one point a cut-off.
 *
 * @param points from no alarm to only alarms
 */
public record RocCurve(List<Point> points) {

  /** Copies the points. */
  public RocCurve {
    points = List.copyOf(points);
  }

  /**
   * A cut-off.
   *
   * @param falseAlarms the share of people without the diagnosis above it
   * @param sensitivity the share of people with it above it
   */
  public record Point(double falseAlarms, double sensitivity) {}

  /**
   * The curve of some values, both rising.
   *
   * @param with of people with the diagnosis
   * @param without of people without it
   */
  static RocCurve of(double[] with, double[] without) {
    List<Point> points = new ArrayList<>(List.of(new Point(0, 0)));
    int i = with.length;
    int j = without.length;
    while (i > 0 || j > 0) {
      double next =
          Math.max(
              i > 0 ? with[i - 1] : Double.NEGATIVE_INFINITY,
              j > 0 ? without[j - 1] : Double.NEGATIVE_INFINITY);
      while (i > 0 && with[i - 1] == next) {
        i--;
      }
      while (j > 0 && without[j - 1] == next) {
        j--;
      }
      points.add(new Point(1 - (double) j / without.length, 1 - (double) i / with.length));
    }
    return new RocCurve(points);
  }
}
