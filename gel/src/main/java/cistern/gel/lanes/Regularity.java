package cistern.gel.lanes;

import cistern.gel.lanes.CommonWidth.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * Drops intervals that stand out far less than the others of the gel. At the ends of the row more
 * is asked of one that lies at an edge of the membrane, where the light falls off, or out of step
 * with the others, as streaks do.
 *
 * @param least least contrast as a share of the median
 * @param leastAtEnd the same for a doubtful interval at an end
 * @param edgeReach how near an edge of the membrane counts, in widths of the interval
 * @param uneven how far the distance to its neighbour may be from the usual step, in steps
 */
record Regularity(double least, double leastAtEnd, double edgeReach, double uneven) {

  /**
   * What is left of some intervals.
   *
   * @param sheet the membrane at mid-height
   */
  List<Interval> check(List<Interval> intervals, Extent sheet) {
    double median = median(intervals.stream().mapToDouble(Interval::contrast).toArray());
    List<Interval> kept = new ArrayList<>();
    for (Interval i : intervals) {
      if (i.contrast() > least * median) {
        kept.add(i);
      }
    }
    double step = step(kept);
    while (kept.size() > 2 && isStray(kept.get(0), kept.get(1), step, median, sheet)) {
      kept.removeFirst();
    }
    while (kept.size() > 2
        && isStray(kept.getLast(), kept.get(kept.size() - 2), step, median, sheet)) {
      kept.removeLast();
    }
    return kept;
  }

  private boolean isStray(Interval end, Interval next, double step, double median, Extent sheet) {
    double reach = edgeReach * end.width();
    boolean isAtEdge =
        sheet.isInside() && (end.from() - sheet.from() < reach || sheet.to() - end.to() < reach);
    double apart = Math.abs(end.centre() - next.centre());
    boolean isOutOfStep = Math.abs(apart - step) > uneven * step;
    return end.contrast() < leastAtEnd * median && (isAtEdge || isOutOfStep);
  }

  private static double step(List<Interval> intervals) {
    double[] steps = new double[Math.max(0, intervals.size() - 1)];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = intervals.get(i + 1).centre() - intervals.get(i).centre();
    }
    return median(steps);
  }

  private static double median(double[] values) {
    java.util.Arrays.sort(values);
    return values.length == 0 ? 0 : values[values.length / 2];
  }
}
