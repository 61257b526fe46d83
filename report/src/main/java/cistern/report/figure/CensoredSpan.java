package cistern.report.figure;

import static cistern.report.look.Token.INK;

import cistern.measurement.Interval;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;

/**
 * All places that a censored value allows: a broken line with a bar at an end that is known and an
 * arrow where it goes on beyond the scale.
 */
final class CensoredSpan {

  private static final double HALF_BAR = 4;
  private static final double LINE = 1.6;
  private static final Pen BROKEN = Pen.line(INK, LINE).withDash("4 3");

  private static final Spot RIGHTWARDS = new Spot(1, 0);
  private static final Spot UPWARDS = new Spot(0, -1);

  private CensoredSpan() {}

  /** A span along a ruler at some height. */
  static List<Element> of(Scale scale, double height, Interval bounds) {
    Spot low = new Spot(scale.at(bounds.lower()), height);
    Spot high = new Spot(scale.at(bounds.upper()), height);
    return List.of(
        Svg.line(low, high, BROKEN),
        end(low, RIGHTWARDS, side(scale, bounds.lower())),
        end(high, RIGHTWARDS, side(scale, bounds.upper())));
  }

  /** A box in a quotient diagram, a line where one of the quotients is known exactly. */
  static List<Element> of(Plane plane, Interval x, Interval y) {
    Spot low = plane.at(x.lower(), y.lower());
    Spot high = plane.at(x.upper(), y.upper());
    Spot middle = new Spot((low.x() + high.x()) / 2, (low.y() + high.y()) / 2);
    List<Element> shapes = new ArrayList<>();
    if (isExact(x) || isExact(y)) {
      shapes.add(Svg.line(low, high, BROKEN));
    } else {
      shapes.add(Svg.rectangle(low, high, BROKEN));
    }
    if (!isExact(x)) {
      shapes.add(end(new Spot(low.x(), middle.y()), RIGHTWARDS, side(plane.x(), x.lower())));
      shapes.add(end(new Spot(high.x(), middle.y()), RIGHTWARDS, side(plane.x(), x.upper())));
    }
    if (!isExact(y)) {
      shapes.add(end(new Spot(middle.x(), low.y()), UPWARDS, side(plane.y(), y.lower())));
      shapes.add(end(new Spot(middle.x(), high.y()), UPWARDS, side(plane.y(), y.upper())));
    }
    return shapes;
  }

  /** −1 before the scale, 1 after it, 0 on it. */
  private static int side(Scale scale, double value) {
    if (scale.isUnder(value)) {
      return -1;
    }
    return scale.isOver(value) ? 1 : 0;
  }

  private static boolean isExact(Interval bounds) {
    return bounds.lower() == bounds.upper();
  }

  /** A bar across the scale where the end is on it, else an arrow off it. */
  private static Element end(Spot spot, Spot along, int side) {
    if (side != 0) {
      return Arrow.of(spot, new Spot(side * along.x(), side * along.y()));
    }
    Spot half = new Spot(HALF_BAR * along.y(), HALF_BAR * along.x());
    return Svg.line(
        spot.to(-half.x(), -half.y()), spot.to(half.x(), half.y()), Pen.line(INK, LINE));
  }
}
