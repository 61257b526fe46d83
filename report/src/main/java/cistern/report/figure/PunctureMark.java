package cistern.report.figure;

import static cistern.report.look.Token.FLUID_TINT;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.QUIET;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Printed;
import cistern.measurement.Interval;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

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
    Optional<Interval> x = albumin.uncertainty().interval95();
    Optional<Interval> y = quotient.uncertainty().interval95();
    OptionalDouble a = albumin.number();
    OptionalDouble q = quotient.number();
    if (a.isEmpty()
        || q.isEmpty()
        || x.isEmpty()
        || y.isEmpty()
        || isOff(a.getAsDouble(), q.getAsDouble())) {
      return List.of();
    }
    Spot centre = plane.at(a.getAsDouble(), q.getAsDouble());
    Spot radii = new Spot(plane.x().length(halfAxis(x.get())), plane.y().length(halfAxis(y.get())));
    return List.of(Svg.ellipse(centre, radii, Pen.line(INK, 0.9).withFill(FLUID_TINT)));
  }

  private double halfAxis(Interval interval) {
    return Math.log(interval.upper() / interval.lower()) / 2 * regionPerInterval;
  }

  private boolean isOff(double albumin, double quotient) {
    return !plane.x().isOn(albumin) || !plane.y().isOn(quotient);
  }

  /** The puncture itself: a mark, an arrow at the edge, a censored span, or nothing. */
  List<Element> toMark(Finding albumin, Finding quotient) {
    if (!albumin.hasValue() || !quotient.hasValue()) {
      return List.of();
    }
    Interval x = albumin.value().orElseThrow();
    Interval y = quotient.value().orElseThrow();
    if (!x.isExact() || !y.isExact()) {
      return CensoredSpan.of(plane, x, y);
    }
    return isOff(x.exactly(), y.exactly())
        ? toArrow(x.exactly(), y.exactly())
        : VerdictMark.SMALL.of(quotient.verdict(), plane.at(x.exactly(), y.exactly()));
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
    if (albumin.number().isEmpty() || quotient.number().isEmpty()) {
      return List.of();
    }
    double a = albumin.number().getAsDouble();
    double q = quotient.number().getAsDouble();
    Spot spot = plane.at(a, q);
    Element mark =
        isOff(a, q)
            ? Arrow.of(spot, outwards(a, q))
            : Svg.circle(spot, 2.2, Pen.line(QUIET, 1).withFill(QUIET));
    return List.of(mark, Svg.label(spot.to(5, -4), number, EARLIER));
  }
}
