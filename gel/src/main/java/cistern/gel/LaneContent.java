package cistern.gel;

import cistern.gel.lanes.FoundLane;
import cistern.gel.net.GreyPlane;
import java.util.Arrays;

/**
 * How much a lane holds: by how much it differs from what lies beside it, and its bands from it.
 *
 * @param plane the picture
 */
record LaneContent(GreyPlane plane) {
  private static final int ROWS = 240;
  private static final int AROUND = 12;

  /** Columns inside the lane and beside it, in its widths from its middle. */
  private static final double[] INSIDE = {-0.24, -0.12, 0, 0.12, 0.24};

  private static final double[] BESIDE = {-0.68, -0.6, 0.6, 0.68};

  /** Light, as a share of the picture's range; the less, the emptier. */
  double of(FoundLane lane) {
    double[] inside = trace(lane, INSIDE);
    double[] beside = trace(lane, BESIDE);
    double[] body = new double[ROWS];
    for (int y = 0; y < ROWS; y++) {
      body[y] = inside[y] - beside[y];
    }
    return Math.abs(quantile(body, 0.5)) + Math.max(0, bands(inside) - bands(beside));
  }

  private double[] trace(FoundLane lane, double[] columns) {
    double first = lane.course().firstRow();
    double[] trace = new double[ROWS];
    double[] row = new double[columns.length];
    for (int y = 0; y < ROWS; y++) {
      double at = first + (lane.course().lastRow() - first) * (y + 0.5) / ROWS;
      for (int i = 0; i < row.length; i++) {
        double x = columns[i] * lane.width();
        row[i] = plane.at(lane.course().at(at) + x, at - lane.course().slope() * x);
      }
      trace[y] = quantile(row, 0.5);
    }
    return trace;
  }

  /** What stands out from its surroundings on one row in twenty. */
  private static double bands(double[] trace) {
    double[] out = new double[ROWS];
    for (int y = 0; y < ROWS; y++) {
      int from = Math.max(0, y - AROUND);
      int to = Math.min(ROWS, y + AROUND + 1);
      out[y] = Math.abs(trace[y] - quantile(Arrays.copyOfRange(trace, from, to), 0.5));
    }
    return quantile(out, 0.95);
  }

  private static double quantile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[(int) (share * (sorted.length - 1))];
  }
}
