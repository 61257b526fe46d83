package cistern.gel.lanes;

import cistern.fact.Facts;
import cistern.gel.image.Density;
import cistern.gel.membrane.Sheet;
import cistern.gel.membrane.Sheet.Edge;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The upper and lower end of the membrane, seen in the bare gaps between the lanes: a step of the
 * density at most of them, all on one straight line. It is looked for where the surround did not
 * show it.
 */
public final class MembraneEnds {
  private static final double MAD_TO_SIGMA = 1.4826;

  /** Rows on either side of a step that are compared, and those that show it is no line. */
  private static final int NEAR = 4;

  private static final int FAR = 14;
  private final double reach;
  private final double least;
  private final double share;
  private final double off;
  private final double lean;

  /** A finder with the limits of some facts. */
  public MembraneEnds(Facts facts) {
    this.reach = facts.number("gel.ends.deepest");
    this.least = facts.number("gel.ends.least-step");
    this.share = facts.number("gel.ends.share");
    this.off = facts.number("gel.ends.off-line");
    this.lean = facts.number("gel.ends.lean");
  }

  /** A step in a gap: its column at mid-height, its row and how much denser it is inside. */
  private record Step(int gap, double column, double row, double size) {}

  /** The sheet with the ends that the gaps show in place of those at the picture's own edge. */
  public Sheet find(Density density, Sheet sheet, List<LanePlace> lanes) {
    if (lanes.size() < 4) {
      return sheet;
    }
    Optional<Edge> top = isAtPicture(sheet.top(), 0) ? end(density, lanes, true) : Optional.empty();
    Optional<Edge> bottom =
        isAtPicture(sheet.bottom(), sheet.height()) ? end(density, lanes, false) : Optional.empty();
    return new Sheet(
        sheet.width(),
        sheet.height(),
        sheet.left(),
        sheet.right(),
        top.orElse(sheet.top()),
        bottom.orElse(sheet.bottom()));
  }

  private static boolean isAtPicture(Edge edge, double at) {
    return edge.at() == at && edge.slope() == 0;
  }

  private Optional<Edge> end(Density density, List<LanePlace> lanes, boolean isTop) {
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i + 1 < lanes.size(); i++) {
      steps.addAll(steps(i, profile(density, lanes.get(i), lanes.get(i + 1)), isTop));
    }
    List<Step> placed = steps.stream().map(s -> placed(s, density, lanes)).toList();
    double square = -lanes.stream().mapToDouble(LanePlace::slope).average().orElse(0);
    double middle = density.width() / 2.0;
    Optional<Edge> best = Optional.empty();
    long most = (long) Math.ceil(share * (lanes.size() - 1));
    for (Step p : placed) {
      for (Step q : placed) {
        double slope = (q.row - p.row) / (q.column - p.column);
        if (q.gap - p.gap >= lanes.size() / 3 && Math.abs(slope - square) <= lean) {
          Edge line = new Edge(p.row + slope * (middle - p.column), slope);
          long on =
              placed.stream()
                  .filter(s -> s.size * p.size > 0)
                  .filter(s -> Math.abs(line.at() + slope * (s.column - middle) - s.row) <= off)
                  .mapToInt(Step::gap)
                  .distinct()
                  .count();
          if (on > most || (on == most && best.isEmpty())) {
            most = on;
            best = Optional.of(line);
          }
        }
      }
    }
    return best;
  }

  private static Step placed(Step s, Density density, List<LanePlace> lanes) {
    LanePlace a = lanes.get(s.gap);
    LanePlace b = lanes.get(s.gap + 1);
    double slope = 0.5 * (a.slope() + b.slope());
    double column = middle(a, b) + slope * (s.row - density.height() / 2.0);
    return new Step(s.gap, column, s.row, s.size);
  }

  private static double middle(LanePlace a, LanePlace b) {
    return 0.5 * (a.xCentre() + 0.5 * a.width() + b.xCentre() - 0.5 * b.width());
  }

  /** The density along the middle of a gap. */
  private static float[] profile(Density density, LanePlace a, LanePlace b) {
    float[] profile = new float[density.height()];
    double slope = 0.5 * (a.slope() + b.slope());
    for (int y = 0; y < profile.length; y++) {
      int centre = (int) Math.round(middle(a, b) + (y - profile.length / 2.0) * slope);
      float sum = 0;
      for (int x = centre - 1; x <= centre + 1; x++) {
        sum += density.at(Math.clamp(x, 0, density.width() - 1), y);
      }
      profile[y] = sum / 3;
    }
    return profile;
  }

  /** The two largest steps near an end of a gap. */
  private List<Step> steps(int gap, float[] profile, boolean isTop) {
    int n = profile.length;
    double[] sums = new double[n + 1];
    for (int y = 0; y < n; y++) {
      sums[y + 1] = sums[y] + profile[y];
    }
    double[] size = new double[n];
    for (int y = 2; y < n - 1; y++) {
      size[y] = step(sums, y, NEAR);
    }
    double[] inner = Arrays.copyOfRange(size, n / 4, n - n / 4);
    for (int i = 0; i < inner.length; i++) {
      inner[i] = Math.abs(inner[i]);
    }
    Arrays.sort(inner);
    double floor = Math.max(least, 5 * MAD_TO_SIGMA * inner[inner.length / 2]);
    List<Step> steps = new ArrayList<>();
    int deep = (int) (reach * n);
    for (int i = 2; i < deep; i++) {
      int y = isTop ? i : n - i;
      double s = Math.abs(size[y]);
      boolean isTurn = s >= Math.abs(size[y - 1]) && s > Math.abs(size[y + 1]);
      if (isTurn && s > floor && Math.abs(step(sums, y, FAR)) > 0.5 * s) {
        steps.add(new Step(gap, 0, y, isTop ? size[y] : -size[y]));
      }
    }
    steps.sort((a, b) -> Double.compare(Math.abs(b.size), Math.abs(a.size)));
    return steps.subList(0, Math.min(2, steps.size()));
  }

  /** The mean of some rows from a row on less that of as many before it. */
  private static double step(double[] sums, int row, int rows) {
    int from = Math.max(0, row - rows);
    int to = Math.min(sums.length - 1, row + rows);
    return (sums[to] - sums[row]) / (to - row) - (sums[row] - sums[from]) / (row - from);
  }
}
