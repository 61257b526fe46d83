package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.List;

/**
 * The lanes in a row of column means: non-overlapping intervals of one width, chosen so that they
 * stand out most from their flanks.
 */
final class CommonWidth {
  private final float[] columns;
  private final double[] sums;
  private final LaneLimits limits;
  private final Extent sheet;

  /** An interval in columns of the strips, and by how much it stands out. */
  record Interval(double from, double to, double contrast) {
    double centre() {
      return 0.5 * (from + to);
    }

    double width() {
      return to - from;
    }
  }

  /** Intervals of a width, and the sum of their contrasts. */
  private record Laying(List<Interval> intervals, double total) {}

  private final List<Interval> intervals;

  private CommonWidth(float[] columns, LaneLimits limits, Extent sheet) {
    this.columns = columns;
    this.limits = limits;
    this.sheet = sheet;
    this.sums = new double[columns.length + 1];
    for (int x = 0; x < columns.length; x++) {
      sums[x + 1] = sums[x] + columns[x];
    }
    this.intervals = best();
  }

  /**
   * @param sheet the membrane at mid-height, in columns of the strips
   */
  static CommonWidth of(float[] columns, LaneLimits limits, Extent sheet) {
    return new CommonWidth(columns, limits, sheet);
  }

  /** From left to right. */
  List<Interval> intervals() {
    return intervals;
  }

  private List<Interval> best() {
    int n = columns.length;
    Laying best = new Laying(List.of(), 0);
    int last = 0;
    for (double w = limits.narrowest() * n; w <= limits.widest() * n; w *= 1.04) {
      int width = (int) Math.round(w);
      if (width == last || width < 4) {
        continue;
      }
      last = width;
      Laying laying = lay(width);
      if (laying.total > best.total) {
        best = laying;
      }
    }
    return refine(limits.regularity().check(best.intervals, sheet));
  }

  private Laying lay(int width) {
    int n = columns.length;
    double[] total = new double[n + 1];
    boolean[] taken = new boolean[n + 1];
    int gap = Math.max(1, (int) (0.5 * limits.flank() * width));
    for (int to = 1; to <= n; to++) {
      total[to] = total[to - 1];
      int from = to - width;
      if (from >= 1 && to < n) {
        double gain = contrast(from, to) - limits.least();
        double before = total[Math.max(0, from - gap)];
        if (gain > 0 && before + gain > total[to]) {
          total[to] = before + gain;
          taken[to] = true;
        }
      }
    }
    List<Interval> laid = new ArrayList<>();
    int at = n;
    while (at > 0) {
      if (taken[at]) {
        laid.addFirst(new Interval(at - width, at, contrast(at - width, at)));
        at = Math.max(0, at - width - gap);
      } else {
        at--;
      }
    }
    return new Laying(laid, total[n]);
  }

  /** The least third of the inside above the higher of the two flanks. */
  private double contrast(int from, int to) {
    int width = to - from;
    int flank = Math.max(2, (int) (limits.flank() * width));
    int edge = Math.max(1, width / 12);
    double third = (width - 2.0 * edge) / 3;
    double inside = Double.MAX_VALUE;
    for (int k = 0; k < 3; k++) {
      int a = (int) (from + edge + k * third);
      int b = (int) (from + edge + (k + 1) * third);
      inside = Math.min(inside, mean(a, Math.max(a + 1, b)));
    }
    double left = mean(Math.max(0, from - flank), from);
    double right = mean(to, Math.min(columns.length, to + flank));
    return inside - Math.max(left, right);
  }

  private double mean(int from, int to) {
    return (sums[to] - sums[from]) / Math.max(1, to - from);
  }

  /** Moves each edge to where the columns cross half way between inside and flank. */
  private List<Interval> refine(List<Interval> coarse) {
    List<Interval> fine = new ArrayList<>();
    for (Interval i : coarse) {
      int from = (int) Math.round(i.from());
      int to = (int) Math.round(i.to());
      int reach = Math.max(2, (to - from) / 5);
      double inside = mean(from + (to - from) / 4, to - (to - from) / 4);
      double left = crossing(from, reach, -1, inside);
      double right = crossing(to - 1, reach, 1, inside);
      fine.add(new Interval(left + 0.5, right + 0.5, i.contrast()));
    }
    return fine;
  }

  /** Where the columns fall through half of their height, going outward from inside an edge. */
  private double crossing(int edge, int reach, int outward, double inside) {
    double ground = Double.MAX_VALUE;
    for (int k = 0; k <= reach; k++) {
      int x = edge + outward * k;
      if (x >= 0 && x < columns.length) {
        ground = Math.min(ground, columns[x]);
      }
    }
    double half = 0.5 * (inside + ground);
    for (int k = -reach; k <= reach; k++) {
      int x = edge + outward * k;
      int y = x + outward;
      if (x >= 0
          && y >= 0
          && x < columns.length
          && y < columns.length
          && columns[x] >= half
          && columns[y] < half) {
        return x + outward * (columns[x] - half) / (columns[x] - columns[y]);
      }
    }
    return edge + 0.5 * outward;
  }
}
