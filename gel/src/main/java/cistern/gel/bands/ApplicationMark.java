package cistern.gel.bands;

import java.util.ArrayList;
import java.util.List;

/**
 * The trace that the applicator leaves: bands on one straight line over most lanes, whatever was
 * put on them. The line is square to the lanes.
 */
final class ApplicationMark {
  private static final int STEPS = 4;
  private final double slope;
  private final Limits limits;

  /**
   * What makes a mark.
   *
   * @param lean how far a mark's slope may be from the square to the lanes, rows per column
   * @param reach how far from the line a band may lie, rows
   * @param share least share of the lanes that have a band on it
   * @param fewest least number of lanes that have a band on it
   * @param present least share of the lanes that answer on it at all
   * @param answer least answer there, as a share of the bands' median height
   */
  record Limits(
      double lean, double reach, double share, int fewest, double present, double answer) {}

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

  List<Line> lines(List<LaneBands> lanes) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < lanes.size(); i++) {
      double column = lanes.get(i).place().xCentre();
      for (Band b : lanes.get(i).bands()) {
        if (b.probability() > 0.03) {
          points.add(new Point(i, column, b.y(), b.height()));
        }
      }
    }
    int needed = (int) Math.max(limits.fewest, Math.ceil(limits.share * lanes.size()));
    List<Line> lines = new ArrayList<>();
    for (Point p : points) {
      for (Point q : points) {
        if (q.lane - p.lane >= lanes.size() / 3) {
          double s = (q.row - p.row) / (q.column - p.column);
          Line line = new Line(p.row - s * p.column, s);
          if (Math.abs(s - slope) <= limits.lean
              && isNew(line, lines, p)
              && seen(line, points) >= needed
              && isPresent(line, points, lanes)) {
            lines.add(line);
          }
        }
      }
    }
    return lines;
  }

  private boolean isNew(Line line, List<Line> lines, Point p) {
    return lines.stream()
        .noneMatch(l -> Math.abs(l.at(p.column) - line.at(p.column)) < 2 * limits.reach);
  }

  private long seen(Line line, List<Point> points) {
    return points.stream()
        .filter(o -> Math.abs(o.row - line.at(o.column)) <= limits.reach)
        .mapToInt(Point::lane)
        .distinct()
        .count();
  }

  /** Whether nearly all lanes answer on the line: bands of some lanes can lie on one by chance. */
  private boolean isPresent(Line line, List<Point> points, List<LaneBands> lanes) {
    double[] heights =
        points.stream()
            .filter(o -> Math.abs(o.row - line.at(o.column)) <= limits.reach)
            .mapToDouble(Point::height)
            .sorted()
            .toArray();
    double least = limits.answer * heights[heights.length / 2];
    long answering = lanes.stream().filter(l -> answer(l, line) >= least).count();
    return answering >= limits.present * lanes.size();
  }

  private double answer(LaneBands lane, Line line) {
    double row = line.at(lane.place().xCentre());
    double most = 0;
    for (int k = -STEPS; k <= STEPS; k++) {
      most = Math.max(most, lane.answerAt(row + limits.reach * k / STEPS));
    }
    return most;
  }

  /** The lane without what lies on a mark. */
  LaneBands without(LaneBands lane, List<Line> lines) {
    double column = lane.place().xCentre();
    return lane.withBands(
        lane.bands().stream()
            .filter(
                b ->
                    lines.stream()
                        .noneMatch(l -> Math.abs(l.at(column) - b.y()) <= 2 * limits.reach))
            .toList());
  }
}
