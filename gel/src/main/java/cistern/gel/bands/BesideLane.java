package cistern.gel.bands;

import cistern.gel.image.Density;
import cistern.gel.lanes.LanePlace;
import java.util.List;

/**
 * The ground on both sides of a lane. A band ends with its lane; what goes on beside it is the edge
 * of the membrane or its shadow.
 *
 * <p>answers: the filter's answer on the left and on the right, from the first row on
 */
final class BesideLane {
  /** Columns that are averaged to either side of the middle of a gap. */
  private static final int HALF = 1;

  private final List<float[]> answers;
  private final int firstRow;

  private BesideLane(List<float[]> answers, int firstRow) {
    this.answers = List.copyOf(answers);
    this.firstRow = firstRow;
  }

  /**
   * @param slope of the bands, rows per column
   * @param rows first row and one past the last that count
   */
  static BesideLane of(Density density, BandFilter filter, Beside lane, double slope, int[] rows) {
    double offset = 0.5 * (lane.place.width() + lane.gap);
    return new BesideLane(
        List.of(
            filter.apply(profile(density, lane.place, -offset, slope, rows)),
            filter.apply(profile(density, lane.place, offset, slope, rows))),
        rows[0]);
  }

  /**
   * A lane and the room beside it.
   *
   * @param gap bare membrane between it and the next lane, pixels
   */
  record Beside(LanePlace place, double gap) {}

  private static float[] profile(
      Density density, LanePlace place, double offset, double slope, int[] rows) {
    float[] profile = new float[rows[1] - rows[0]];
    int down = (int) Math.round(slope * offset);
    double middle = density.height() / 2.0;
    for (int y = rows[0]; y < rows[1]; y++) {
      int row = Math.clamp(y + down, rows[0], rows[1] - 1);
      int centre = (int) Math.round(place.xCentre() + offset + (row - middle) * place.slope());
      float sum = 0;
      for (int x = centre - HALF; x <= centre + HALF; x++) {
        sum += density.at(Math.clamp(x, 0, density.width() - 1), row);
      }
      profile[y - rows[0]] = sum / (2 * HALF + 1);
    }
    return profile;
  }

  /** The lesser side's greatest answer, above or below the ground, within a reach of a row. */
  double answer(double row, double reach) {
    double least = Double.MAX_VALUE;
    for (float[] a : answers) {
      double most = 0;
      int from = Math.clamp(Math.round(row - firstRow - reach), 0, a.length - 1);
      int to = Math.clamp(Math.round(row - firstRow + reach), 0, a.length - 1);
      for (int y = from; y <= to; y++) {
        most = Math.max(most, Math.abs(a[y]));
      }
      least = Math.min(least, most);
    }
    return least;
  }
}
