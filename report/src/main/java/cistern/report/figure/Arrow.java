package cistern.report.figure;

import static cistern.report.look.Token.INK;

import cistern.report.markup.Element;
import java.util.List;

/** The head of an arrow: the value lies further on in its direction. */
final class Arrow {

  private static final double LENGTH = 8;
  private static final double HALF_WIDTH = 4;

  private Arrow() {}

  /** A head whose tip is at a spot; the direction is a spot's two numbers, not both zero. */
  static Element of(Spot tip, Spot direction) {
    double size = Math.hypot(direction.x(), direction.y());
    double dx = direction.x() / size;
    double dy = direction.y() / size;
    Spot base = tip.to(-LENGTH * dx, -LENGTH * dy);
    return Svg.polygon(
        List.of(
            tip,
            base.to(-HALF_WIDTH * dy, HALF_WIDTH * dx),
            base.to(HALF_WIDTH * dy, -HALF_WIDTH * dx)),
        Pen.area(INK));
  }
}
