package cistern.gel;

import cistern.gel.bands.Band;
import cistern.gel.bands.Strip;
import java.util.List;

/**
 * How the bands of a lane run across it, the median of its bands, rows of the picture.
 *
 * @param bands how many could be followed
 * @param lean by how much they lie lower at the right edge than in the middle
 * @param sag by how much they lie lower in the middle than at the edges
 */
record BandSlant(int bands, double lean, double sag) {
  private static final int REACH = 20;
  private static final int THIRDS = 3;

  /** A third's middle lies so far from the lane's, in half widths. */
  private static final double THIRD = 0.71;

  static BandSlant of(Strip strip, List<Band> bands) {
    double step = strip.rows().step();
    double[] leans = new double[bands.size()];
    double[] sags = new double[bands.size()];
    for (int i = 0; i < leans.length; i++) {
      double[] at = new double[THIRDS];
      for (int k = 0; k < THIRDS; k++) {
        at[k] = middle(strip, bands.get(i).row(), k);
      }
      leans[i] = (at[2] - at[0]) / 2 / THIRD * step;
      sags[i] = (at[1] - (at[0] + at[2]) / 2) / (THIRD * THIRD) * step;
    }
    return new BandSlant(leans.length, median(leans), median(sags));
  }

  private static double median(double[] values) {
    java.util.Arrays.sort(values);
    return values.length == 0 ? 0 : values[values.length / 2];
  }

  /** The middle of what differs from the ground near a row, in a third of the lane's columns. */
  private static double middle(Strip strip, int row, int third) {
    int from = Math.max(0, row - REACH);
    int to = Math.min(cistern.gel.net.PairMaps.ROWS - 1, row + REACH);
    double ends = 0.5 * (light(strip, from, third) + light(strip, to, third));
    double sum = 0;
    double moment = 0;
    for (int y = from; y <= to; y++) {
      double d = light(strip, y, third) - ends;
      double weight = d * d;
      sum += weight;
      moment += weight * (y - row);
    }
    return sum > 1e-9 ? moment / sum : 0;
  }

  private static double light(Strip strip, int row, int third) {
    int columns = cistern.gel.net.PairMaps.COLUMNS;
    int wide = (columns - 8) / THIRDS;
    double sum = 0;
    for (int x = 0; x < wide; x++) {
      sum += strip.at(row, 4 + third * wide + x);
    }
    return sum / wide;
  }
}
