package cistern.gel.bands;

import cistern.gel.image.Density;
import cistern.gel.lanes.LanePlace;

/**
 * A lane cut into upright groups of columns: the mean density of each group, row by row.
 *
 * <p>profiles: one profile a group, from left to right
 *
 * <p>offsets: column of each group's middle less the lane's, pixels
 *
 * <p>column: the lane's middle at mid-height
 */
final class LaneGroups {
  private final float[][] profiles;
  private final double[] offsets;
  private final double column;

  private LaneGroups(float[][] profiles, double[] offsets, double column) {
    this.profiles = profiles;
    this.offsets = offsets;
    this.column = column;
  }

  LaneGroups withProfiles(float[][] others) {
    return new LaneGroups(others, offsets, column);
  }

  /** The column of a group's middle at mid-height. */
  double column(int group) {
    return column + offsets[group];
  }

  float[][] profiles() {
    return profiles;
  }

  double[] offsets() {
    return offsets;
  }

  /**
   * @param count how many groups
   * @param inner share of the lane's width that is used, its edges left out
   * @param rows first row and one past the last that count
   */
  static LaneGroups of(Density density, LanePlace place, int count, double inner, int[] rows) {
    double usable = Math.max(count, inner * place.width());
    double each = usable / count;
    double[] offsets = new double[count];
    for (int k = 0; k < count; k++) {
      offsets[k] = -0.5 * usable + (k + 0.5) * each;
    }
    int columns = Math.max(1, (int) Math.round(each));
    float[][] profiles = new float[count][rows[1] - rows[0]];
    double middle = density.height() / 2.0;
    for (int y = rows[0]; y < rows[1]; y++) {
      double centre = place.xCentre() + (y - middle) * place.slope();
      for (int k = 0; k < count; k++) {
        int from = (int) Math.round(centre + offsets[k] - 0.5 * (columns - 1));
        profiles[k][y - rows[0]] = mean(density, from, columns, y);
      }
    }
    return new LaneGroups(profiles, offsets, place.xCentre());
  }

  private static float mean(Density density, int from, int columns, int y) {
    int last = density.width() - 1;
    float sum = 0;
    if (from >= 0 && from + columns - 1 <= last) {
      for (int x = from; x < from + columns; x++) {
        sum += density.at(x, y);
      }
    } else {
      for (int x = from; x < from + columns; x++) {
        sum += density.at(Math.clamp(x, 0, last), y);
      }
    }
    return sum / columns;
  }

  int count() {
    return profiles.length;
  }

  int rows() {
    return profiles[0].length;
  }
}
