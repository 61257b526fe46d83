package cistern.report.figure;

import static cistern.report.look.Token.BLOOD;
import static cistern.report.look.Token.BLOOD_TINT;
import static cistern.report.look.Token.FLUID;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.QUIET;

import cistern.barrier.Hyperbola;
import cistern.barrier.QuotientLimits;
import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The published curves of a protein: its limit, the mean of people without synthesis, the lowest
 * plausible quotient where it is known, and the lines of equal intrathecal fraction, Q = Qlim/(1 −
 * f).
 *
 * @param plane where they are drawn
 * @param limits the published curves
 * @param fractions of the fraction lines, 0 to 1
 */
record Curves(Plane plane, QuotientLimits limits, List<Double> fractions) {

  private static final int STEPS = 96;
  private static final double LABEL_WIDTH = 33;
  private static final double LABEL_HEIGHT = 10;
  private static final double CLEARANCE = 3;
  private static final double GAP = 4;

  /** The curves of a protein. */
  static Curves of(Facts facts, Protein protein) {
    List<Double> fractions =
        Stream.of("first", "second", "third", "fourth")
            .map(n -> facts.number("figure.fraction-line." + n))
            .toList();
    return new Curves(
        Plane.of(facts, protein), QuotientLimits.of(facts, protein.analyte()), fractions);
  }

  /** What must not leave the field. */
  List<Element> toClipped() {
    List<Element> shapes = new ArrayList<>();
    shapes.add(bloodArea());
    for (double fraction : fractions) {
      shapes.add(
          Svg.polyline(
              spots(albumin -> limits.upper().at(albumin) / (1 - fraction), LABEL_WIDTH),
              Pen.line(FLUID, 1).withDash("1.5 2.5")));
    }
    shapes.add(curve(limits.mean(), Pen.line(QUIET, 0.9).withDash("7 3 1 3")));
    limits.lower().ifPresent(low -> shapes.add(curve(low, Pen.line(QUIET, 0.9))));
    shapes.add(curve(limits.upper(), Pen.line(INK, 2)));
    return shapes;
  }

  /** The labels, directly at what they name. */
  List<Element> toLabels() {
    List<Element> labels = new ArrayList<>();
    Lettering fraction = new Lettering(FLUID, 10.5, Anchor.START, false);
    double albumin = plane.x().value(LABEL_WIDTH / 2 / (plane.right() - plane.left()));
    double lower = plane.y().at(limits.upper().at(albumin)) + LABEL_HEIGHT - CLEARANCE;
    for (double f : fractions) {
      double own = plane.y().at(limits.upper().at(albumin) / (1 - f)) + CLEARANCE;
      lower = Math.min(own, lower - LABEL_HEIGHT);
      labels.add(
          Svg.label(
              new Spot(plane.left() + GAP, lower), Printed.decimals(f * 100, 0) + " %", fraction));
    }
    labels.add(rightOf(limits.upper(), "limit", Lettering.of(INK).withBold()));
    labels.add(rightOf(limits.mean(), "mean", Lettering.of(QUIET)));
    limits.lower().ifPresent(low -> labels.add(rightOf(low, "lowest", Lettering.of(QUIET))));
    labels.addAll(
        Svg.labelOnPaper(
            new Spot(plane.left() + GAP + 2, plane.top() + 15),
            "made within the CNS",
            Lettering.of(FLUID)));
    labels.add(
        Svg.label(
            new Spot(plane.right() - GAP - 2, plane.bottom() - 8),
            "from the blood",
            Lettering.of(BLOOD).with(Anchor.END)));
    return labels;
  }

  private Element rightOf(Hyperbola curve, String name, Lettering lettering) {
    double y = plane.y().at(curve.at(plane.x().to()));
    return Svg.label(new Spot(plane.right() + GAP, y + 4), name, lettering);
  }

  private Element bloodArea() {
    List<Spot> outline = new ArrayList<>(spots(limits.upper()::at, 0));
    List<Spot> floor =
        limits
            .lower()
            .map(low -> spots(low::at, 0))
            .orElseGet(() -> List.of(plane.origin(), new Spot(plane.right(), plane.bottom())));
    outline.addAll(floor.reversed());
    return Svg.polygon(outline, Pen.area(BLOOD_TINT));
  }

  private Element curve(Hyperbola hyperbola, Pen pen) {
    return Svg.polyline(spots(hyperbola::at, 0), pen);
  }

  /** The curve from some way into the field; it stops where it leaves the field. */
  private List<Spot> spots(DoubleUnaryOperator quotient, double indent) {
    double first = indent / (plane.right() - plane.left());
    return IntStream.rangeClosed(0, STEPS)
        .mapToDouble(i -> plane.x().value(first + (1 - first) * i / STEPS))
        .mapToObj(albumin -> plane.at(albumin, quotient.applyAsDouble(albumin)))
        .toList();
  }
}
