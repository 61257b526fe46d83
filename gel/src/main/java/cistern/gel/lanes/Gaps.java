package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.List;

/**
 * Places in a regular row of lanes where a lane stays out: nothing visible was put there, or it did
 * not take. Only gaps between lanes count, since nothing tells how far a row goes on at its ends.
 */
public final class Gaps {
  private final double uneven;

  /**
   * @param uneven how far a gap may be from a whole number of steps, in steps
   */
  public Gaps(double uneven) {
    this.uneven = uneven;
  }

  /** The lanes with an empty one in each gap; the same lanes when the row is not regular. */
  public List<LanePlace> fill(List<LanePlace> lanes) {
    if (lanes.size() < 3) {
      return lanes;
    }
    double[] steps = new double[lanes.size() - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = lanes.get(i + 1).xCentre() - lanes.get(i).xCentre();
    }
    double[] sorted = steps.clone();
    java.util.Arrays.sort(sorted);
    double step = sorted[(sorted.length - 1) / 2];
    List<LanePlace> filled = new ArrayList<>();
    filled.add(lanes.getFirst());
    for (int i = 0; i < steps.length; i++) {
      int whole = (int) Math.round(steps[i] / step);
      if (whole < 1 || Math.abs(steps[i] / step - whole) > uneven * whole) {
        return lanes;
      }
      LanePlace from = lanes.get(i);
      LanePlace to = lanes.get(i + 1);
      for (int k = 1; k < whole; k++) {
        filled.add(between(from, to, (double) k / whole));
      }
      filled.add(to);
    }
    return List.copyOf(filled);
  }

  private static LanePlace between(LanePlace from, LanePlace to, double share) {
    return new LanePlace(
        from.xCentre() + share * (to.xCentre() - from.xCentre()),
        from.width() + share * (to.width() - from.width()),
        from.slope() + share * (to.slope() - from.slope()));
  }
}
