package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.List;

/**
 * Drops intervals that stand out far less than the others of the gel. At an edge of the membrane a
 * flank is missing and the light falls off, so that bare membrane can look like a faint lane: there
 * more is asked.
 *
 * @param least least contrast as a share of the median
 * @param leastAtEdge the same for an interval at an edge of the membrane
 * @param edgeReach how near the edge that is, in widths of the interval
 */
record Regularity(double least, double leastAtEdge, double edgeReach) {

  /**
   * What is left of some intervals.
   *
   * @param sheet the membrane at mid-height
   */
  List<CommonWidth.Interval> check(List<CommonWidth.Interval> intervals, Extent sheet) {
    double[] contrasts =
        intervals.stream().mapToDouble(CommonWidth.Interval::contrast).sorted().toArray();
    List<CommonWidth.Interval> kept = new ArrayList<>();
    for (CommonWidth.Interval i : intervals) {
      double reach = edgeReach * i.width();
      boolean isAtEdge = i.from() - sheet.from() < reach || sheet.to() - i.to() < reach;
      double share = isAtEdge && sheet.isInside() ? leastAtEdge : least;
      if (i.contrast() > share * contrasts[contrasts.length / 2]) {
        kept.add(i);
      }
    }
    return kept;
  }
}
