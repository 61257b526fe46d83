package cistern.gel.bands;

import java.util.ArrayList;
import java.util.List;

/**
 * The trace that the applicator leaves: bands on one straight line over most lanes, whatever was
 * put on them. The line is square to the lanes.
 */
final class ApplicationMark {
  private final double slope;
  private final double lean;
  private final double reach;
  private final double share;
  private final int fewest;

  /** A straight line: its row at column 0, and rows per column. */
  record Line(double row, double slope) {
    double at(double column) {
      return row + slope * column;
    }
  }

  /** A band at its lane's column. */
  private record Point(int lane, double column, double row) {}

  /**
   * @param slope rows per column of a line square to the lanes
   * @param lean how far a mark's slope may be from that
   * @param reach how far from the line a band may lie, rows
   * @param share least share of the lanes
   * @param fewest least number of lanes
   */
  ApplicationMark(double slope, double lean, double reach, double share, int fewest) {
    this.slope = slope;
    this.lean = lean;
    this.reach = reach;
    this.share = share;
    this.fewest = fewest;
  }

  List<Line> lines(List<LaneBands> lanes) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < lanes.size(); i++) {
      double column = lanes.get(i).place().xCentre();
      for (Band b : lanes.get(i).bands()) {
        if (b.probability() > 0.03) {
          points.add(new Point(i, column, b.y()));
        }
      }
    }
    int needed = (int) Math.max(fewest, Math.ceil(share * lanes.size()));
    List<Line> lines = new ArrayList<>();
    for (Point p : points) {
      for (Point q : points) {
        if (q.lane - p.lane >= lanes.size() / 3) {
          double s = (q.row - p.row) / (q.column - p.column);
          Line line = new Line(p.row - s * p.column, s);
          if (Math.abs(s - slope) <= lean
              && isNew(line, lines, p)
              && seen(line, points) >= needed) {
            lines.add(line);
          }
        }
      }
    }
    return lines;
  }

  private boolean isNew(Line line, List<Line> lines, Point p) {
    return lines.stream().noneMatch(l -> Math.abs(l.at(p.column) - line.at(p.column)) < 2 * reach);
  }

  private long seen(Line line, List<Point> points) {
    return points.stream()
        .filter(o -> Math.abs(o.row - line.at(o.column)) <= reach)
        .mapToInt(Point::lane)
        .distinct()
        .count();
  }

  /** The lane without what lies on a mark. */
  LaneBands without(LaneBands lane, List<Line> lines) {
    double column = lane.place().xCentre();
    return lane.withBands(
        lane.bands().stream()
            .filter(b -> lines.stream().noneMatch(l -> Math.abs(l.at(column) - b.y()) <= 2 * reach))
            .toList());
  }
}
