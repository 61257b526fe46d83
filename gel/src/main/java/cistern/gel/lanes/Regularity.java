package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.List;

/** Drops intervals that stand out far less than the others of the gel. */
final class Regularity {
  private final List<CommonWidth.Interval> intervals;

  Regularity(List<CommonWidth.Interval> intervals) {
    this.intervals = intervals;
  }

  List<CommonWidth.Interval> check() {
    if (intervals.isEmpty()) {
      return intervals;
    }
    double[] contrasts =
        intervals.stream().mapToDouble(CommonWidth.Interval::contrast).sorted().toArray();
    double median = contrasts[contrasts.length / 2];
    List<CommonWidth.Interval> kept = new ArrayList<>();
    for (CommonWidth.Interval i : intervals) {
      if (i.contrast() > 0.2 * median) {
        kept.add(i);
      }
    }
    return kept;
  }
}
