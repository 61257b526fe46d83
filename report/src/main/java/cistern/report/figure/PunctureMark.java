package cistern.report.figure;

import static cistern.report.look.Token.FLUID_TINT;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.QUIET;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingValue.Bounds;
import cistern.finding.FindingValue.None;
import cistern.finding.FindingValue.Point;
import cistern.finding.Printed;
import cistern.finding.Uncertainty.Interval95;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One puncture in a quotient diagram.
 *
 * @param plane where it is drawn
 * @param regionPerInterval half axis of the region over half length of the 95 % interval: √(−2 ln(1
 *     − chance)) over the normal quantile, as both quotients are log-normal and share no input
 */
record PunctureMark(Plane plane, double regionPerInterval) {

  private static final Lettering EARLIER = new Lettering(QUIET, 10.5, Anchor.START, true);

  /** Room between the arrow of a value off the scale and its number, clear of the areas' names. */
  private static final double CLEARANCE = 4;

  private static final double UNDER_NAMES = 34;
  private static final double OVER_NAMES = 26;

  static PunctureMark of(Facts facts, Plane plane) {
    double radius = Math.sqrt(-2 * Math.log1p(-facts.number("figure.region.chance")));
    return new PunctureMark(plane, radius / facts.number("figure.region.normal-quantile"));
  }

  /** The region that holds the true point, to be drawn under everything; empty when unknown. */
  List<Element> toRegion(Finding albumin, Finding quotient) {
    Optional<Interval95> x = albumin.uncertainty().interval95();
    Optional<Interval95> y = quotient.uncertainty().interval95();
    if (!(albumin.value() instanceof Point(double a))
        || !(quotient.value() instanceof Point(double q))
        || x.isEmpty()
        || y.isEmpty()
        || isOff(a, q)) {
      return List.of();
    }
    Spot radii = new Spot(plane.x().length(halfAxis(x.get())), plane.y().length(halfAxis(y.get())));
    return List.of(Svg.ellipse(plane.at(a, q), radii, Pen.line(INK, 0.9).withFill(FLUID_TINT)));
  }

  private double halfAxis(Interval95 interval) {
    return Math.log(interval.upper() / interval.lower()) / 2 * regionPerInterval;
  }

  private boolean isOff(double albumin, double quotient) {
    return !plane.x().isOn(albumin) || !plane.y().isOn(quotient);
  }

  /** The puncture itself: a mark, an arrow at the edge, a censored span, or nothing. */
  List<Element> toMark(Finding albumin, Finding quotient) {
    if (albumin.value() instanceof None || quotient.value() instanceof None) {
      return List.of();
    }
    if (albumin.value() instanceof Point(double a) && quotient.value() instanceof Point(double q)) {
      return isOff(a, q) ? toArrow(a, q) : VerdictMark.SMALL.of(quotient.verdict(), plane.at(a, q));
    }
    return CensoredSpan.of(plane, bounds(albumin), bounds(quotient));
  }

  private static Bounds bounds(Finding finding) {
    return switch (finding.value()) {
      case Bounds bounds -> bounds;
      case Point(double v) -> new Bounds(v, v);
      case None none -> throw new IllegalArgumentException(finding.code() + " has no value");
    };
  }

  private List<Element> toArrow(double albumin, double quotient) {
    Spot spot = plane.at(albumin, quotient);
    List<String> numbers = new ArrayList<>();
    if (!plane.y().isOn(quotient)) {
      numbers.add(Printed.quotient(quotient));
    }
    if (!plane.x().isOn(albumin)) {
      numbers.add("albumin " + Printed.quotient(albumin));
    }
    boolean isAtRight = spot.x() > (plane.left() + plane.right()) / 2;
    boolean isAtTop = spot.y() < (plane.top() + plane.bottom()) / 2;
    Lettering letters = Lettering.of(INK).withBold();
    List<Element> shapes = new ArrayList<>();
    shapes.add(Arrow.of(spot, outwards(albumin, quotient)));
    shapes.addAll(
        Svg.labelOnPaper(
            spot.to(isAtRight ? -CLEARANCE : CLEARANCE, isAtTop ? UNDER_NAMES : -OVER_NAMES),
            String.join(", ", numbers),
            letters.with(isAtRight ? Anchor.END : Anchor.START)));
    return shapes;
  }

  private Spot outwards(double albumin, double quotient) {
    return new Spot(side(plane.x(), albumin), -side(plane.y(), quotient));
  }

  /** −1 before the scale, 1 after it, 0 on it. */
  private static double side(Scale scale, double value) {
    if (scale.isUnder(value)) {
      return -1;
    }
    return scale.isOver(value) ? 1 : 0;
  }

  /** An earlier puncture: a small numbered point, an arrow at the edge, or nothing. */
  List<Element> toEarlier(Finding albumin, Finding quotient, String number) {
    if (!(albumin.value() instanceof Point(double a))
        || !(quotient.value() instanceof Point(double q))) {
      return List.of();
    }
    Spot spot = plane.at(a, q);
    Element mark =
        isOff(a, q)
            ? Arrow.of(spot, outwards(a, q))
            : Svg.circle(spot, 2.2, Pen.line(QUIET, 1).withFill(QUIET));
    return List.of(mark, Svg.label(spot.to(5, -4), number, EARLIER));
  }
}
