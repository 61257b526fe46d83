package cistern.report.figure;

import static cistern.report.look.Token.INK;

import cistern.finding.FindingValue.Bounds;
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

  private CensoredSpan() {}

  /** A span along a ruler at some height. */
  static List<Element> of(Scale scale, double height, Bounds bounds) {
    Spot low = new Spot(scale.at(bounds.lower()), height);
    Spot high = new Spot(scale.at(bounds.upper()), height);
    return List.of(
        Svg.line(low, high, BROKEN),
        end(low, new Spot(-1, 0), scale.isOn(bounds.lower())),
        end(high, new Spot(1, 0), scale.isOn(bounds.upper())));
  }

  /** A box in a quotient diagram, a line where one of the quotients is known exactly. */
  static List<Element> of(Plane plane, Bounds x, Bounds y) {
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
      Scale scale = plane.x();
      shapes.add(end(new Spot(low.x(), middle.y()), new Spot(-1, 0), scale.isOn(x.lower())));
      shapes.add(end(new Spot(high.x(), middle.y()), new Spot(1, 0), scale.isOn(x.upper())));
    }
    if (!isExact(y)) {
      Scale scale = plane.y();
      shapes.add(end(new Spot(middle.x(), low.y()), new Spot(0, 1), scale.isOn(y.lower())));
      shapes.add(end(new Spot(middle.x(), high.y()), new Spot(0, -1), scale.isOn(y.upper())));
    }
    return shapes;
  }

  private static boolean isExact(Bounds bounds) {
    return bounds.lower() == bounds.upper();
  }

  private static Element end(Spot spot, Spot outwards, boolean isOnScale) {
    if (!isOnScale) {
      return Arrow.of(spot, outwards);
    }
    Spot half = new Spot(HALF_BAR * outwards.y(), HALF_BAR * outwards.x());
    return Svg.line(
        spot.to(-half.x(), -half.y()), spot.to(half.x(), half.y()), Pen.line(INK, LINE));
  }
}
