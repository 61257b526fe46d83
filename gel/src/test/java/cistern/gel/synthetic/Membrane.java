package cistern.gel.synthetic;

import cistern.gel.synthetic.GelPainter.Sheet;
import java.util.ArrayList;
import java.util.List;

/**
 * Density that the membrane itself adds: blotches, bubbles, dust, fibres, scratches, streaks,
 * marks.
 */
final class Membrane {
  private final List<Spot> spots = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private final List<Streak> streaks = new ArrayList<>();
  private final double markY;
  private final double markHeight;
  private final double markSigma;
  private final double ground;

  /** A round Gaussian spot. */
  private record Spot(double x, double y, double radius, double height) {}

  /** A straight fibre, scratch or pen stroke from one end to the other. */
  private static final class Line {
    private final double[] from;
    private final double[] to;
    private final double half;
    private final double height;

    Line(double[] from, double[] to, double half, double height) {
      this.from = from;
      this.to = to;
      this.half = half;
      this.height = height;
    }
  }

  /** A vertical streak. */
  private record Streak(double x, double half, double height) {}

  Membrane(Level level, Draw draw, Sheet sheet) {
    double share = level.faults().share();
    int w = sheet.width();
    int h = sheet.height();
    ground = draw.between(0, 0.12);
    for (int i = (int) (share * draw.between(0, 14)); i > 0; i--) {
      double radius = draw.between(20, 120);
      spots.add(
          new Spot(draw.between(0, w), draw.between(0, h), radius, 0.05 * draw.normal() * share));
    }
    for (int i = (int) (share * draw.between(0, 24)); i > 0; i--) {
      double height = draw.chance(0.4) ? -0.2 : draw.between(0.2, 0.9);
      spots.add(new Spot(draw.between(0, w), draw.between(0, h), draw.between(1.5, 9), height));
    }
    for (int i = (int) (share * draw.between(0, 7)); i > 0; i--) {
      double x = draw.between(0, w);
      double y = draw.between(0, h);
      double[] to = {x + draw.between(-160, 160), y + draw.between(-160, 160)};
      double height = draw.chance(0.4) ? -0.25 : draw.between(0.1, 0.6);
      lines.add(new Line(new double[] {x, y}, to, draw.between(0.7, 2), height));
    }
    for (int i = (int) (share * draw.between(0, 6)); i > 0; i--) {
      streaks.add(new Streak(draw.between(0, w), draw.between(1, 5), 0.08 * draw.normal()));
    }
    labels(draw, sheet, share);
    boolean mark = draw.chance(0.3 * share);
    markY = h * draw.between(0.2, 0.8);
    markHeight = mark ? draw.between(0.08, 0.3) : 0;
    markSigma = draw.between(2, 5);
  }

  private void labels(Draw draw, Sheet sheet, double share) {
    if (!draw.chance(share)) {
      return;
    }
    for (GelMaker.LaneDraw lane : sheet.lanes()) {
      for (int k = 0; k < 4; k++) {
        double x = lane.x() + draw.between(-15, 15);
        double y = sheet.height() * 0.025 + draw.between(-10, 10);
        double[] to = {x + draw.between(-14, 14), y + draw.between(-12, 12)};
        lines.add(new Line(new double[] {x, y}, to, 1.8, 1.0));
      }
    }
  }

  double at(double x, double y) {
    double d = ground;
    for (Spot s : spots) {
      double dx = x - s.x;
      double dy = y - s.y;
      double r = (dx * dx + dy * dy) / (s.radius * s.radius);
      if (r < 6) {
        d += s.height * Math.exp(-r);
      }
    }
    for (Line l : lines) {
      d += stroke(l, x, y);
    }
    for (Streak s : streaks) {
      double t = (x - s.x) / s.half;
      if (t * t < 9) {
        d += s.height * Math.exp(-t * t);
      }
    }
    if (markHeight > 0) {
      double t = (y - markY) / markSigma;
      if (t * t < 16) {
        d += markHeight * Math.exp(-0.5 * t * t);
      }
    }
    return d;
  }

  private static double stroke(Line l, double x, double y) {
    double vx = l.to[0] - l.from[0];
    double vy = l.to[1] - l.from[1];
    double t = ((x - l.from[0]) * vx + (y - l.from[1]) * vy) / (vx * vx + vy * vy + 1e-9);
    t = Math.clamp(t, 0, 1);
    double dx = x - l.from[0] - t * vx;
    double dy = y - l.from[1] - t * vy;
    double r = (dx * dx + dy * dy) / (l.half * l.half);
    return r < 6 ? l.height * Math.exp(-r) : 0;
  }
}
