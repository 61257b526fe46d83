package cistern.gel.lanes;

import cistern.gel.image.Density;
import cistern.gel.membrane.Sheet;

/**
 * The picture cut into broad horizontal strips, each the mean density of its rows, with the local
 * ground taken away and the rest squeezed into 0…1, so that a faint lane and a strong one weigh
 * alike.
 *
 * <p>Columns are pairs of pixels; a value is negative nowhere and 0 outside the membrane.
 */
final class Strips {
  /** Pixels of a column of the strips. */
  static final int STEP = 2;

  private final float[][] values;
  private final double[] rows;

  private Strips(float[][] values, double[] rows) {
    this.values = values;
    this.rows = rows;
  }

  /**
   * @param isWide whether lanes may be wider than half the window of the ground
   */
  static Strips of(Density density, Sheet sheet, LaneLimits limits, boolean isWide) {
    int n = limits.strips();
    int columns = density.width() / STEP;
    float[][] raw = new float[n][];
    double[] rows = new double[n];
    double step = (double) density.height() / n;
    for (int s = 0; s < n; s++) {
      int from = (int) (s * step);
      int to = (int) ((s + 1) * step);
      rows[s] = 0.5 * (from + to - 1);
      raw[s] = mean(density, from, to, columns);
    }
    float[][] flat = new float[n][];
    int reach = (int) (limits.groundReach() * columns);
    for (int s = 0; s < n; s++) {
      flat[s] = Ground.flatten(raw[s], range(sheet, rows[s], columns), reach, isWide);
    }
    squeeze(flat);
    return new Strips(flat, rows);
  }

  private static int[] range(Sheet sheet, double row, int columns) {
    int from = Math.clamp(sheet.firstColumn(row, 6) / STEP, 0, columns - 1);
    int to = Math.clamp(sheet.lastColumn(row, 6) / STEP, from + 1, columns);
    return new int[] {from, to};
  }

  private static float[] mean(Density density, int from, int to, int columns) {
    float[] sum = new float[columns];
    for (int y = from; y < to; y++) {
      for (int x = 0; x < columns; x++) {
        sum[x] += density.at(STEP * x, y) + density.at(STEP * x + 1, y);
      }
    }
    float share = 1f / (STEP * (to - from));
    for (int x = 0; x < columns; x++) {
      sum[x] *= share;
    }
    return sum;
  }

  private static void squeeze(float[][] flat) {
    float[] all = new float[flat.length * flat[0].length];
    int i = 0;
    for (float[] strip : flat) {
      for (float v : strip) {
        all[i++] = v;
      }
    }
    java.util.Arrays.sort(all);
    float half = Math.max(1e-3f, 0.5f * all[(int) (0.75 * all.length)]);
    for (float[] strip : flat) {
      for (int x = 0; x < strip.length; x++) {
        strip[x] = strip[x] / (strip[x] + half);
      }
    }
  }

  int count() {
    return values.length;
  }

  int columns() {
    return values[0].length;
  }

  /** The row at the middle of a strip, in pixels. */
  double row(int strip) {
    return rows[strip];
  }

  /**
   * Adds a strip's values at evenly spaced columns to a row of sums; outside it there is nothing.
   *
   * @param first column of the strip for the first sum
   * @param step columns of the strip from sum to sum
   */
  void addTo(float[] sums, int strip, double first, double step) {
    float[] v = values[strip];
    for (int x = 0; x < sums.length; x++) {
      double column = first + step * x;
      int i = (int) column;
      if (column >= 0 && i + 1 < v.length) {
        sums[x] += v[i] + (float) (column - i) * (v[i + 1] - v[i]);
      }
    }
  }
}
