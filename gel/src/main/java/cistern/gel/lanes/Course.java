package cistern.gel.lanes;

/**
 * The middle line of a lane: columns at evenly spaced rows, straight on beyond the first and last.
 */
public final class Course {
  private final double firstRow;
  private final double lastRow;
  private final double[] columns;

  /**
   * @param columns at least two
   */
  Course(double firstRow, double lastRow, double[] columns) {
    this.firstRow = firstRow;
    this.lastRow = lastRow;
    this.columns = columns.clone();
  }

  /** The row of the lane's top. */
  public double firstRow() {
    return firstRow;
  }

  /** The row of the lane's end. */
  public double lastRow() {
    return lastRow;
  }

  /** The column at a row. */
  public double at(double row) {
    double step = (lastRow - firstRow) / (columns.length - 1);
    double t = (row - firstRow) / step;
    if (t < 0) {
      return columns[0] + slope() * (row - firstRow);
    }
    if (t >= columns.length - 1) {
      return columns[columns.length - 1] + slope() * (row - lastRow);
    }
    int i = (int) t;
    return columns[i] + (t - i) * (columns[i + 1] - columns[i]);
  }

  /** Columns per row along which it runs, by least squares. */
  public double slope() {
    int n = columns.length;
    double step = (lastRow - firstRow) / (n - 1);
    double up = 0;
    double down = 0;
    for (int i = 0; i < n; i++) {
      double t = i - (n - 1) / 2.0;
      up += t * columns[i];
      down += t * t;
    }
    return up / (down * step);
  }

  /** The course moved sideways. */
  Course moved(double by) {
    double[] moved = columns.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] += by;
    }
    return new Course(firstRow, lastRow, moved);
  }
}
