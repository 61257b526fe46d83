package cistern.gel.lanes;

import cistern.gel.net.LaneMaps;

/**
 * The straight lines along which the lanes of a gel run: columns per row at the middle of the
 * picture, and how much more at its right edge.
 */
record Shear(double lean, double fan) {
  /** The sweeps of the search: step of the lean, of the fan, and how many to either side. */
  private static final double[][] SWEEPS = {
    {0.03, 0.05, 5, 2}, {0.012, 0.02, 2, 2}, {0.004, 0.008, 2, 2}
  };

  /** Rows that are looked at: few in the search, more in the profile. */
  private static final int SPARSE = 2;

  private static final int SEARCHED = 8;

  /** One of the two maps. */
  interface Map {
    float at(int x, int y);
  }

  /** The lines along which the middles of lanes add up best. */
  static Shear of(LaneMaps maps) {
    Shear best = new Shear(0, 0);
    double most = -1;
    for (double[] sweep : SWEEPS) {
      Shear centre = best;
      for (int i = (int) -sweep[2]; i <= sweep[2]; i++) {
        for (int j = (int) -sweep[3]; j <= sweep[3]; j++) {
          Shear s = new Shear(centre.lean + i * sweep[0], centre.fan + j * sweep[1]);
          double score = s.score(maps);
          if (score > most) {
            most = score;
            best = s;
          }
        }
      }
    }
    return best;
  }

  private double score(LaneMaps maps) {
    double score = 0;
    for (double v : profile(maps, maps::middle, new int[] {0, maps.height(), SEARCHED})) {
      score += v * v;
    }
    return score;
  }

  /** The column at a row of the line that crosses the middle of the picture at a column. */
  double at(LaneMaps maps, double column, double row) {
    double across = 2 * column / maps.width() - 1;
    return column + (lean + fan * across) * (row - maps.height() / 2.0);
  }

  /** The mean of a map along each line, from a row to another. */
  double[] profile(LaneMaps maps, Map map, int from, int to) {
    return profile(maps, map, new int[] {from, to, SPARSE});
  }

  /**
   * @param rows the first, the one after the last, and the step
   */
  private double[] profile(LaneMaps maps, Map map, int[] rows) {
    int width = maps.width();
    double[] profile = new double[width];
    double share = 1.0 / Math.max(1, (rows[1] - rows[0] + rows[2] - 1) / rows[2]);
    for (int y = rows[0]; y < rows[1]; y += rows[2]) {
      double first = at(maps, 0, y);
      double step = (at(maps, width - 1, y) - first) / Math.max(1, width - 1);
      for (int x = 0; x < width; x++) {
        double column = first + step * x;
        int i = (int) column;
        if (column >= 0 && i + 1 < width) {
          double left = map.at(i, y);
          profile[x] += share * (left + (column - i) * (map.at(i + 1, y) - left));
        }
      }
    }
    return profile;
  }

  /** The sum of a map along each row. */
  double[] rows(LaneMaps maps, Map map) {
    double[] rows = new double[maps.height()];
    for (int y = 0; y < rows.length; y++) {
      for (int x = 0; x < maps.width(); x++) {
        rows[y] += map.at(x, y);
      }
    }
    return rows;
  }
}
