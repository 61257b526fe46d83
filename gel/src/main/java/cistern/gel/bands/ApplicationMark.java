package cistern.gel.bands;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The trace that the applicator leaves: bands on one straight line over most lanes, whatever was
 * put on them. The line is nearly square to the lanes.
 */
final class ApplicationMark {
  /** Lines that are looked at; the first ones have the most lanes. */
  private static final int MOST_LINES = 4;

  private static final int REFITS = 3;
  private final double slope;
  private final Limits limits;

  /**
   * What makes a mark.
   *
   * @param lean how far a mark's slope may be from the square to the lanes, rows per column
   * @param reach how far from the line a band may lie, rows
   * @param share least share of the lanes that have a band on it
   * @param fewest least number of lanes that have a band on it
   * @param whole least strength with which a lane shows it, over its own
   * @param present least share of the lanes that show it
   * @param residue share of its height under which what is left on its line is its residue
   * @param foot share of its height down to which it is said to reach
   */
  record Limits(
      double lean,
      double reach,
      double share,
      int fewest,
      double whole,
      double present,
      double residue,
      double foot) {}

  /** A straight line: its row at column 0, and rows per column. */
  record Line(double row, double slope) {
    double at(double column) {
      return row + slope * column;
    }
  }

  /** A band at its lane's column. */
  private record Point(int lane, double column, double row, double height) {}

  /**
   * @param slope rows per column of a line square to the lanes
   */
  ApplicationMark(double slope, Limits limits) {
    this.slope = slope;
    this.limits = limits;
  }

  /**
   * The marks of a gel.
   *
   * @param lanes the lanes with their bands, marks among them
   * @param groups the groups of each lane, whose rows begin with the first row
   * @param profileReach half the height of a mark's profile, rows
   */
  List<MarkProfile> find(
      List<LaneBands> lanes, List<LaneGroups> groups, int firstRow, int profileReach) {
    int needed = (int) Math.max(limits.fewest, Math.ceil(limits.share * lanes.size()));
    List<Point> points = points(lanes);
    List<MarkProfile> marks = new ArrayList<>();
    for (int i = 0; i < MOST_LINES; i++) {
      Optional<Line> best = best(points, lanes.size(), needed);
      if (best.isEmpty()) {
        break;
      }
      List<Point> on = on(best.get(), points);
      MarkProfile profile = MarkProfile.of(best.get(), groups, firstRow, profileReach);
      long present =
          IntStream.range(0, lanes.size())
              .filter(
                  k ->
                      isOn(k, on, profile) || profile.isSeen(groups.get(k), firstRow, limits.whole))
              .count();
      points.removeAll(on);
      if (present >= limits.present * lanes.size()) {
        marks.add(profile);
        points.removeIf(p -> isWithin(p.column, p.row, profile));
      }
    }
    return marks;
  }

  /** Whether a lane has a band on the line that is high enough for the mark. */
  private boolean isOn(int lane, List<Point> on, MarkProfile profile) {
    double least = limits.whole * profile.height();
    return on.stream().anyMatch(p -> p.lane == lane && p.height >= least);
  }

  private static List<Point> points(List<LaneBands> lanes) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < lanes.size(); i++) {
      for (Band b : lanes.get(i).bands()) {
        if (b.probability() > 0.03) {
          points.add(new Point(i, lanes.get(i).place().xCentre(), b.y(), b.height()));
        }
      }
    }
    return points;
  }

  /** The line with bands of the most lanes near it, if they are enough. */
  private Optional<Line> best(List<Point> points, int lanes, int needed) {
    Optional<Line> best = Optional.empty();
    double most = needed;
    for (Point p : points) {
      for (Point q : points) {
        double s = (q.row - p.row) / (q.column - p.column);
        if (q.lane - p.lane >= lanes / 3 && Math.abs(s - slope) <= limits.lean) {
          Line line = new Line(p.row - s * p.column, s);
          double seen = seen(line, points, lanes);
          if (seen >= most) {
            most = seen;
            best = Optional.of(line);
          }
        }
      }
    }
    return best.map(line -> refitted(line, points));
  }

  /** How many lanes have a band near a line, less a share that grows with their distances. */
  private double seen(Line line, List<Point> points, int lanes) {
    double[] nearest = new double[lanes];
    Arrays.fill(nearest, 1);
    for (Point p : points) {
      double d = Math.abs(p.row - line.at(p.column)) / limits.reach;
      nearest[p.lane] = Math.min(nearest[p.lane], d);
    }
    double seen = 0;
    for (double d : nearest) {
      seen += d < 1 ? 1.2 - 0.2 * d : 0;
    }
    return seen;
  }

  private List<Point> on(Line line, List<Point> points) {
    return points.stream()
        .filter(p -> Math.abs(p.row - line.at(p.column)) <= limits.reach)
        .toList();
  }

  /** The line through the bands near a line, by least squares. */
  private Line refitted(Line first, List<Point> points) {
    Line line = first;
    for (int round = 0; round < REFITS; round++) {
      double[][] a = {{0, 0, 0}, {0, 1e-9, 0}};
      for (Point p : on(line, points)) {
        double[] j = {1, p.column};
        for (int r = 0; r < 2; r++) {
          for (int c = 0; c < 2; c++) {
            a[r][c] += j[r] * j[c];
          }
          a[r][2] += j[r] * p.row;
        }
      }
      double[] fit = LeastSquares.solve(a);
      line = new Line(fit[0], fit[1]);
    }
    return line;
  }

  /** The lane without what is left of marks that were taken away. */
  LaneBands without(LaneBands lane, List<MarkProfile> marks) {
    return lane.withBands(
        lane.bands().stream()
            .filter(b -> marks.stream().noneMatch(m -> isLeft(lane, b, m)))
            .toList());
  }

  private boolean isLeft(LaneBands lane, Band band, MarkProfile mark) {
    return isWithin(lane.place().xCentre(), band.y(), mark)
        && band.height() < limits.residue * mark.height();
  }

  /** Whether a place lies as near to a mark's line as the mark is wide. */
  private boolean isWithin(double column, double row, MarkProfile mark) {
    double reach = Math.max(2 * limits.reach, mark.halfWidth(limits.foot));
    return Math.abs(mark.line().at(column) - row) <= reach;
  }
}
