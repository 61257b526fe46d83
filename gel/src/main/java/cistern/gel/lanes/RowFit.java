package cistern.gel.lanes;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Lays a named row of lanes on a profile of where middles may be, all of it at once: every lane
 * wants to stand where one is seen, an empty one where none is, and steps want to be regular, one
 * length inside a pair and another between pairs. A step may be longer than that, for a price.
 */
final class RowFit {
  private static final double NONE = -1e9;
  private static final double UNEVEN = 9;
  private static final double JUMP = 0.45;
  private static final double SEEN = 0.12;
  private static final double CLEAREST = 0.85;
  private static final double EMPTY_SEEN = 0.35;
  private static final double[] BETWEEN = {1, 1.1, 1.22, 1.36, 1.52, 1.75, 2.05, 2.5};
  private static final int PITCHES = 16;

  private final double[] lane;
  private final double[] empty;
  private final boolean[] isEmpty;
  private final boolean[] isBetween;

  /** Columns of the lanes, and what they are worth. */
  record Laid(double worth, List<Integer> columns, double inside, double between) {
    Laid {
      columns = List.copyOf(columns);
    }

    /** The column of the first or last lane. */
    int end(boolean isFirst) {
      return isFirst ? columns.getFirst() : columns.getLast();
    }
  }

  /** A stretch of columns on which the first or last lane may not lie. */
  private record Barred(boolean isFirst, double from, double to) {
    boolean holds(boolean first, double column) {
      return first == isFirst && column > from && column < to;
    }
  }

  /** Steps of a row: inside pairs, between them, and over how many columns at once. */
  private record Steps(double inside, double between, int stride) {}

  RowFit(double[] profile, List<NamedLane> lanes, List<OptionalInt> pairs) {
    int n = profile.length;
    this.lane = new double[n];
    this.empty = new double[n];
    for (int x = 0; x < n; x++) {
      lane[x] = Math.min(profile[x], CLEAREST) - SEEN;
      empty[x] = SEEN - EMPTY_SEEN * profile[x];
    }
    this.isEmpty = new boolean[lanes.size()];
    this.isBetween = new boolean[Math.max(0, lanes.size() - 1)];
    for (int i = 0; i < isEmpty.length; i++) {
      isEmpty[i] = lanes.get(i).kind() == LaneKind.BLANK;
      if (i > 0) {
        boolean isPair =
            pairs.get(i).isPresent()
                && pairs.get(i - 1).isPresent()
                && pairs.get(i).getAsInt() == pairs.get(i - 1).getAsInt();
        isBetween[i - 1] = !isPair && !isEmpty[i];
      }
    }
  }

  /**
   * The best way to lay the row.
   *
   * @param width of a lane, columns
   */
  Optional<Laid> best(double width) {
    int k = isEmpty.length;
    int n = lane.length;
    double least = Math.max(4, Math.min(0.7 * width, 0.5 * n / k));
    double most = Math.min(2.9 * width, 1.5 * n / Math.max(2, k)) + 2;
    Optional<Laid> best = Optional.empty();
    for (int i = 0; i < PITCHES; i++) {
      double inside = least * Math.pow(Math.max(1, most / least), i / (PITCHES - 1.0));
      for (double ratio : isVaried() ? BETWEEN : new double[] {1}) {
        if (length(inside, inside * ratio) <= 1.03 * n) {
          best = better(best, run(new Steps(inside, inside * ratio, 2), Optional.empty()));
        }
      }
    }
    return best.map(this::refined);
  }

  private boolean isVaried() {
    boolean isSome = false;
    boolean isAll = true;
    for (boolean b : isBetween) {
      isSome |= b;
      isAll &= b;
    }
    return isSome && !isAll;
  }

  private double length(double inside, double between) {
    double length = 0;
    for (boolean b : isBetween) {
      length += b ? between : inside;
    }
    return length;
  }

  private static Optional<Laid> better(Optional<Laid> one, Optional<Laid> other) {
    boolean isOther =
        other.isPresent() && (one.isEmpty() || other.get().worth() > one.get().worth());
    return isOther ? other : one;
  }

  private Laid refined(Laid coarse) {
    Optional<Laid> best = Optional.empty();
    for (double f : new double[] {0.96, 1, 1.04}) {
      for (double g : new double[] {0.95, 1, 1.05}) {
        Steps steps = new Steps(coarse.inside() * f, coarse.between() * g, 1);
        best = better(best, run(steps, Optional.empty()));
      }
    }
    return best.orElse(coarse);
  }

  /** By how much the best way beats the best one whose first or whose last lane lies elsewhere. */
  double clearness(Laid best, double width) {
    double clear = Double.MAX_VALUE;
    for (boolean isFirst : new boolean[] {true, false}) {
      int end = best.end(isFirst);
      Barred barred = new Barred(isFirst, end - 0.5 * width, end + 0.5 * width);
      for (double f : new double[] {0.9, 1, 1.1}) {
        Steps steps = new Steps(best.inside() * f, best.between() * f, 1);
        Optional<Laid> other = run(steps, Optional.of(barred));
        clear = Math.min(clear, other.map(o -> best.worth() - o.worth()).orElse(clear));
      }
    }
    return clear;
  }

  private Optional<Laid> run(Steps steps, Optional<Barred> barred) {
    int stride = steps.stride();
    int n = (lane.length + stride - 1) / stride;
    int[][] back = new int[isEmpty.length][n];
    double[] worth = own(0, n, stride, barred);
    for (int k = 1; k < isEmpty.length; k++) {
      double pitch = (isBetween[k - 1] ? steps.between() : steps.inside()) / stride;
      double[] next = stepped(worth, pitch, back[k]);
      double[] own = own(k, n, stride, barred);
      for (int x = 0; x < n; x++) {
        next[x] += own[x];
      }
      worth = next;
    }
    int at = 0;
    for (int x = 1; x < n; x++) {
      at = worth[x] > worth[at] ? x : at;
    }
    return worth[at] < NONE / 2
        ? Optional.empty()
        : Optional.of(traced(steps, worth[at], at, back));
  }

  private static Laid traced(Steps steps, double worth, int last, int[][] back) {
    int[] columns = new int[back.length];
    int at = last;
    for (int k = back.length - 1; k >= 0; k--) {
      columns[k] = at * steps.stride();
      at = back[k][at];
    }
    return new Laid(
        worth, Arrays.stream(columns).boxed().toList(), steps.inside(), steps.between());
  }

  /** What it is worth that a lane lies at each column. */
  private double[] own(int k, int n, int stride, Optional<Barred> barred) {
    double[] from = isEmpty[k] ? empty : lane;
    double[] own = new double[n];
    for (int x = 0; x < n; x++) {
      own[x] = from[x * stride];
      if (stride == 2 && !isEmpty[k] && 2 * x + 1 < from.length) {
        own[x] = Math.max(own[x], from[2 * x + 1]);
      }
      boolean isEnd = k == 0 || k == isEmpty.length - 1;
      double column = (double) x * stride;
      if (isEnd && barred.isPresent() && barred.get().holds(k == 0, column)) {
        own[x] = NONE;
      }
    }
    return own;
  }

  /** The best way to reach each column by one step, without what the column itself is worth. */
  private static double[] stepped(double[] worth, double pitch, int[] back) {
    int n = worth.length;
    double[] best = new double[n];
    Arrays.fill(best, NONE);
    int longest = (int) (pitch * 1.3) + 1;
    for (int o = Math.max(1, (int) (pitch * 0.72)); o <= Math.min(longest, n - 1); o++) {
      double d = o / pitch - 1;
      double cost = Math.min(JUMP, UNEVEN * d * d);
      for (int x = o; x < n; x++) {
        if (worth[x - o] - cost > best[x]) {
          best[x] = worth[x - o] - cost;
          back[x] = x - o;
        }
      }
    }
    int top = 0;
    for (int x = (int) (pitch * 1.15) + 1, from = 0; x < n; x++, from++) {
      top = worth[from] >= worth[top] ? from : top;
      if (worth[top] - JUMP > best[x]) {
        best[x] = worth[top] - JUMP;
        back[x] = top;
      }
    }
    return best;
  }
}
