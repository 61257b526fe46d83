package cistern.report.figure;

import static cistern.report.look.Token.HAIRLINE;
import static cistern.report.look.Token.QUIET;

import cistern.finding.Printed;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** Ticks, their numbers and the names of the two quotients. */
final class Axes {

  private static final double TICK = 4;
  private static final double PER_THOUSAND = 1e-3;
  private static final Lettering NUMBER = Lettering.of(QUIET);

  private Axes() {}

  /** The axes of a plane. */
  static List<Element> of(Plane plane, Protein protein) {
    List<Element> shapes = new ArrayList<>();
    Pen hairline = Pen.line(HAIRLINE, 1);
    for (double tick : plane.x().ticks()) {
      Spot foot = new Spot(plane.x().at(tick), plane.bottom());
      shapes.add(Svg.line(foot, foot.to(0, TICK), hairline));
      shapes.add(Svg.label(foot.to(0, 15), number(tick), NUMBER.with(Anchor.MIDDLE)));
    }
    for (double tick : plane.y().ticks()) {
      Spot foot = new Spot(plane.left(), plane.y().at(tick));
      shapes.add(Svg.line(foot, foot.to(-TICK, 0), hairline));
      if (isNumbered(tick, plane.y())) {
        shapes.add(Svg.label(foot.to(-6, 4), number(tick), NUMBER.with(Anchor.END)));
      }
    }
    shapes.add(Svg.rectangle(plane.origin(), plane.farCorner(), hairline));
    shapes.addAll(names(plane, protein));
    return shapes;
  }

  private static List<Element> names(Plane plane, Protein protein) {
    double middle = (plane.left() + plane.right()) / 2;
    double height = (plane.top() + plane.bottom()) / 2;
    Lettering centred = NUMBER.with(Anchor.MIDDLE);
    return List.of(
        Svg.label(new Spot(middle, Plane.HEIGHT - 8), "albumin quotient × 10³", centred),
        Svg.upright(new Spot(11, height), protein.term() + " quotient × 10³", centred));
  }

  /** On a long scale only whole decades carry their number. */
  private static boolean isNumbered(double tick, LogScale scale) {
    boolean isShort = scale.ticks().size() <= 11;
    double digits = Math.log10(tick / PER_THOUSAND);
    return isShort || Math.abs(digits - Math.rint(digits)) < PER_THOUSAND;
  }

  private static String number(double ratio) {
    double times1000 =
        BigDecimal.valueOf(ratio / PER_THOUSAND).round(new MathContext(3)).doubleValue();
    return Printed.significant(times1000);
  }
}
