package cistern.gel.bands;

import java.util.Arrays;
import java.util.List;

/**
 * The stain that the applicator's mark adds, row by row across its line: the median over all groups
 * of columns of all lanes, so that what a single lane holds there does not count.
 *
 * <p>line: where the mark runs
 *
 * <p>profile: OD above the ground; its middle lies on the line
 */
final class MarkProfile {
  /** Samples at either end of the profile that give the ground. */
  private static final int ENDS = 3;

  /** Shifts that are tried to either side. */
  private static final int SHIFTS = 6;

  /** Share of the misfit that a shift may leave. */
  private static final double CLEARLY = 0.7;

  private final ApplicationMark.Line line;
  private final float[] profile;
  private final double spread;

  private MarkProfile(ApplicationMark.Line line, float[] profile, double spread) {
    this.line = line;
    this.profile = profile;
    this.spread = spread;
  }

  /**
   * @param lanes the groups of each lane, whose rows begin with the first row
   * @param firstRow row of the picture at index 0
   * @param reach half the height of the profile, rows
   */
  static MarkProfile of(
      ApplicationMark.Line line, List<LaneGroups> lanes, int firstRow, int reach) {
    int groups = lanes.stream().mapToInt(LaneGroups::count).sum();
    float[][] seen = new float[2 * reach + 1][groups];
    int i = 0;
    for (LaneGroups lane : lanes) {
      for (int k = 0; k < lane.count(); k++) {
        float[] window = window(lane, k, line.at(lane.column(k)) - firstRow, reach);
        for (int d = 0; d < window.length; d++) {
          seen[d][i] = window[d];
        }
        i++;
      }
    }
    float[] profile = new float[2 * reach + 1];
    for (int d = 0; d < profile.length; d++) {
      Arrays.sort(seen[d]);
      profile[d] = seen[d][groups / 2];
    }
    MarkProfile whole = new MarkProfile(line, profile, 0);
    return new MarkProfile(line, profile, whole.spread(lanes, firstRow));
  }

  /** Density of a group around a row, less the straight line between its ends. */
  private static float[] window(LaneGroups lane, int group, double row, int reach) {
    float[] window = new float[2 * reach + 1];
    float[] v = lane.profiles()[group];
    for (int d = 0; d < window.length; d++) {
      double at = Math.clamp(row + d - reach, 0, v.length - 1.001);
      int y = (int) at;
      window[d] = v[y] + (float) (at - y) * (v[y + 1] - v[y]);
    }
    double first = 0;
    double last = 0;
    for (int d = 0; d < ENDS; d++) {
      first += window[d] / ENDS;
      last += window[window.length - 1 - d] / ENDS;
    }
    for (int d = 0; d < window.length; d++) {
      window[d] -= (float) (first + (last - first) * d / (window.length - 1));
    }
    return window;
  }

  /** The median departure from 1 of the mark's strength in the lanes. */
  private double spread(List<LaneGroups> lanes, int firstRow) {
    double[] departures =
        lanes.stream().mapToDouble(l -> Math.abs(strength(l, firstRow) - 1)).sorted().toArray();
    return departures[departures.length / 2];
  }

  /** Whether at least so much of the mark is seen in a lane. */
  boolean isSeen(LaneGroups lane, int firstRow, double least) {
    return strength(lane, firstRow) >= least;
  }

  private double strength(LaneGroups lane, int firstRow) {
    return strength(lane, firstRow, 0);
  }

  /**
   * What a lane holds on the line, over what the mark adds.
   *
   * @param shift rows by which the lane's mark lies below the line
   */
  private double strength(LaneGroups lane, int firstRow, double shift) {
    double both = 0;
    double own = 1e-12;
    int reach = profile.length / 2;
    for (int k = 0; k < lane.count(); k++) {
      float[] window = window(lane, k, line.at(lane.column(k)) + shift - firstRow, reach);
      for (int d = 0; d < window.length; d++) {
        both += window[d] * profile[d];
        own += profile[d] * profile[d];
      }
    }
    return both / own;
  }

  /**
   * The shift within a reach at which a lane is explained best by the mark alone, rows; none when
   * it is hardly better than on the line, where a band beside the mark may be the reason.
   */
  private double shift(LaneGroups lane, int firstRow, double reach) {
    double best = 0;
    double least = CLEARLY * misfit(lane, firstRow, 0);
    for (int i = -SHIFTS; i <= SHIFTS; i++) {
      double shift = reach * i / SHIFTS;
      double left = misfit(lane, firstRow, shift);
      if (left < least) {
        least = left;
        best = shift;
      }
    }
    return best;
  }

  /** The density that a shifted mark of the lane's own strength leaves, regardless of sign. */
  private double misfit(LaneGroups lane, int firstRow, double shift) {
    double own = strength(lane, firstRow, shift);
    float[] mean = new float[profile.length];
    for (int k = 0; k < lane.count(); k++) {
      double row = line.at(lane.column(k)) + shift - firstRow;
      float[] window = window(lane, k, row, profile.length / 2);
      for (int d = 0; d < window.length; d++) {
        mean[d] += window[d] / lane.count();
      }
    }
    double sum = 0;
    for (int d = 0; d < mean.length; d++) {
      sum += Math.abs(mean[d] - own * profile[d]);
    }
    return sum;
  }

  /** How far from the line the mark still adds a share of its height, rows. */
  double halfWidth(double share) {
    double least = share * height();
    int middle = profile.length / 2;
    int d = 0;
    while (d < middle && Math.max(profile[middle - d], profile[middle + d]) >= least) {
      d++;
    }
    return d;
  }

  /** The greatest density that the mark adds, OD. */
  double height() {
    float most = 0;
    for (float v : profile) {
      most = Math.max(most, v);
    }
    return most;
  }

  ApplicationMark.Line line() {
    return line;
  }

  /**
   * A lane's groups without the mark. A lane whose strength is as usual as the others' has the mark
   * at its own strength and place; where more lies on the line, the usual is taken away and the
   * rest stays.
   *
   * @param mostOwn departure from the usual strength beyond which a lane holds more than the mark
   * @param mostShift how far a lane's mark may lie from the line, rows
   */
  LaneGroups takenFrom(LaneGroups lane, int firstRow, double mostOwn, double mostShift) {
    double nearest = shift(lane, firstRow, mostShift);
    double own = strength(lane, firstRow, nearest);
    boolean isUsual = Math.abs(own - 1) <= Math.min(mostOwn, 3 * spread);
    double taken = isUsual ? own : 1;
    double shift = isUsual ? nearest : 0;
    float[][] rest = new float[lane.count()][];
    int reach = profile.length / 2;
    for (int k = 0; k < rest.length; k++) {
      float[] v = lane.profiles()[k].clone();
      double row = line.at(lane.column(k)) + shift - firstRow;
      int from = (int) Math.max(0, Math.ceil(row - reach));
      int to = (int) Math.min(v.length - 1, Math.floor(row + reach));
      for (int y = from; y <= to; y++) {
        double at = Math.min(y - row + reach, profile.length - 1.001);
        int d = (int) at;
        v[y] -= (float) (taken * (profile[d] + (at - d) * (profile[d + 1] - profile[d])));
      }
      rest[k] = v;
    }
    return lane.withProfiles(rest);
  }
}
