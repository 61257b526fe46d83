package cistern.gel.bands;

import cistern.gel.lanes.LanePlace;
import java.util.Arrays;

/** Makes a straightened trace of a lane from its groups and its bend. */
final class Tracing {
  private static final double MAD_TO_SIGMA = 1.4826;
  private static final double MEAN_TO_SIGMA = 1.2533;
  private final BandFilter filter;
  private final int trimmed;
  private final int noiseReach;

  /**
   * @param trimmed groups left out at either end when the groups of a row are averaged
   * @param noiseReach half the window of the local noise, rows
   */
  Tracing(BandFilter filter, int trimmed, int noiseReach) {
    this.filter = filter;
    this.trimmed = trimmed;
    this.noiseReach = noiseReach;
  }

  LaneTrace trace(LanePlace place, LaneGroups groups, Bend bend, int firstRow) {
    float[][] straight = straighten(groups, bend);
    float[] profile = trimmedMean(straight);
    float[] answer = filter.apply(profile);
    float[][] columns = new float[straight.length][];
    for (int k = 0; k < columns.length; k++) {
      columns[k] = filter.apply(straight[k]);
    }
    return new LaneTrace(
        new LaneTrace.Origin(place, firstRow), profile, answer, noise(columns), columns);
  }

  private static float[][] straighten(LaneGroups groups, Bend bend) {
    int rows = groups.rows();
    float[][] straight = new float[groups.count()][rows];
    for (int k = 0; k < straight.length; k++) {
      double shift = bend.at(groups.offsets()[k]);
      int whole = (int) Math.floor(shift);
      float part = (float) (shift - whole);
      float[] g = groups.profiles()[k];
      for (int y = 0; y < rows; y++) {
        int a = Math.clamp(y + whole, 0, rows - 1);
        int b = Math.min(a + 1, rows - 1);
        straight[k][y] = g[a] + part * (g[b] - g[a]);
      }
    }
    return straight;
  }

  private float[] trimmedMean(float[][] straight) {
    int n = straight.length;
    int rows = straight[0].length;
    float[] profile = new float[rows];
    float[] row = new float[n];
    for (int y = 0; y < rows; y++) {
      for (int k = 0; k < n; k++) {
        float v = straight[k][y];
        int at = k;
        while (at > 0 && row[at - 1] > v) {
          row[at] = row[at - 1];
          at--;
        }
        row[at] = v;
      }
      float sum = 0;
      for (int k = trimmed; k < n - trimmed; k++) {
        sum += row[k];
      }
      profile[y] = sum / (n - 2 * trimmed);
    }
    return profile;
  }

  /** From half the difference of every other group: bands and hump cancel in it. */
  private float[] noise(float[][] columns) {
    int n = columns.length;
    int rows = columns[0].length;
    float[] answer = new float[rows];
    for (int k = 0; k < n; k++) {
      float sign = k % 2 == 0 ? 1f / n : -1f / n;
      for (int y = 0; y < rows; y++) {
        answer[y] += sign * columns[k][y];
      }
    }
    float[] size = new float[rows];
    for (int y = 0; y < rows; y++) {
      size[y] = Math.abs(answer[y]);
    }
    float[] sorted = size.clone();
    Arrays.sort(sorted);
    double whole = MAD_TO_SIGMA * sorted[rows / 2];
    float[] noise = new float[rows];
    double[] sums = new double[rows + 1];
    for (int y = 0; y < rows; y++) {
      sums[y + 1] = sums[y] + Math.min(4 * whole, size[y]);
    }
    for (int y = 0; y < rows; y++) {
      int from = Math.max(0, y - noiseReach);
      int to = Math.min(rows, y + noiseReach + 1);
      double local = MEAN_TO_SIGMA * (sums[to] - sums[from]) / (to - from);
      noise[y] = (float) Math.max(0.7 * whole, Math.max(local, 1e-5));
    }
    return noise;
  }
}
