package cistern.gel.bands;

import cistern.gel.lanes.FoundLane;
import cistern.gel.net.GreyPlane;
import cistern.gel.net.PairMaps;
import java.util.Arrays;

/**
 * A lane straightened: its light row by row along its middle line, and what lies beside it.
 *
 * <p>light: rows × columns, the lane in the middle and 0.3 of its width to either side
 */
public final class Strip {
  private static final int ROWS = PairMaps.ROWS;
  private static final int COLUMNS = PairMaps.COLUMNS;
  private static final double REACH = 0.8;

  /** Columns inside the lane's edges, and the middle ones that are read. */
  private static final int INNER = 7;

  private static final int TRIMMED = 2;
  private static final int BESIDE = 2;

  private final Rows rows;
  private final float[] light;
  private final float[] profile;

  /** The rows of the picture that the strip covers. */
  public record Rows(double first, double last) {
    /** Rows of the picture in one of the strip. */
    public double step() {
      return (last - first) / ROWS;
    }

    /** The row of the picture at a row of the strip. */
    public double at(double row) {
      return first + (row + 0.5) * step() - 0.5;
    }

    /** The row of the strip at a row of the picture. */
    public double rowOf(double y) {
      return (y + 0.5 - first) / step() - 0.5;
    }
  }

  private Strip(Rows rows, float[] light) {
    this.rows = rows;
    this.light = light;
    this.profile = profile(light);
  }

  /** The strip of a lane. */
  public static Strip of(GreyPlane plane, FoundLane lane, Rows rows) {
    float[] light = new float[ROWS * COLUMNS];
    double lean = lane.course().slope();
    for (int i = 0; i < 2 * ROWS; i++) {
      double y = rows.first + (rows.last - rows.first) * i / (2 * ROWS - 1.0);
      double x = lane.course().at(y);
      for (int j = 0; j < 2 * COLUMNS; j++) {
        double s = REACH * (2.0 * j / (2 * COLUMNS - 1.0) - 1) * lane.width();
        light[i / 2 * COLUMNS + j / 2] += 0.25f * plane.at(x + s, y - lean * s);
      }
    }
    return new Strip(rows, light);
  }

  /** Both strips of a pair on the scale that the net knows. */
  public static float[] scaled(Strip csf, Strip serum) {
    float[] both = Arrays.copyOf(csf.light, 2 * csf.light.length);
    System.arraycopy(serum.light, 0, both, csf.light.length, serum.light.length);
    float[] sorted = new float[both.length / 3];
    for (int i = 0; i < sorted.length; i++) {
      sorted[i] = both[3 * i];
    }
    Arrays.sort(sorted);
    float middle = quantile(sorted, 0.5);
    float wide = quantile(sorted, 0.995) - quantile(sorted, 0.005) + 1e-3f;
    float half = 0.5f * (quantile(sorted, 0.98) - quantile(sorted, 0.02)) + 0.01f * wide;
    for (int i = 0; i < both.length; i++) {
      both[i] = Math.clamp((both[i] - middle) / half, -4, 4);
    }
    return both;
  }

  private static float quantile(float[] sorted, double share) {
    return sorted[(int) Math.round(share * (sorted.length - 1))];
  }

  /** The rows that it covers. */
  public Rows rows() {
    return rows;
  }

  /** The light at a row and column. */
  public float at(int row, int column) {
    return light[row * COLUMNS + column];
  }

  /** Columns of the lane that are read. */
  static int firstColumn() {
    return INNER;
  }

  /** One past the last column that is read. */
  static int endColumn() {
    return COLUMNS - INNER;
  }

  /** The light of each row: the mean of the middle columns without the most extreme. */
  public float[] profile() {
    return profile.clone();
  }

  private static float[] profile(float[] light) {
    float[] profile = new float[ROWS];
    float[] row = new float[COLUMNS - 2 * INNER];
    for (int y = 0; y < ROWS; y++) {
      System.arraycopy(light, y * COLUMNS + INNER, row, 0, row.length);
      Arrays.sort(row);
      float sum = 0;
      for (int i = TRIMMED; i < row.length - TRIMMED; i++) {
        sum += row[i];
      }
      profile[y] = sum / (row.length - 2 * TRIMMED);
    }
    return profile;
  }

  /** The light beside the lane, the median over its length. */
  double beside() {
    float[] edge = new float[2 * BESIDE * ROWS];
    int n = 0;
    for (int y = 0; y < ROWS; y++) {
      for (int i = 0; i < BESIDE; i++) {
        edge[n++] = light[y * COLUMNS + i];
        edge[n++] = light[(y + 1) * COLUMNS - 1 - i];
      }
    }
    Arrays.sort(edge);
    return edge[edge.length / 2];
  }

  /** The light of the lane over what lies beside it, the median of its rows. */
  public double body() {
    float[] sorted = profile();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2] - beside();
  }
}
