package cistern.report.figure;

import static cistern.report.look.Token.FLUID;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.QUIET;

import cistern.barrier.Hyperbola;
import cistern.barrier.QuotientLimits;
import cistern.fact.Facts;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * The published curves of a protein: its limit, the mean of people without synthesis, and the
 * lowest plausible quotient where it is known.
 *
 * @param plane where they are drawn
 * @param limits the published curves
 */
record Curves(Plane plane, QuotientLimits limits) {

  private static final int STEPS = 96;
  private static final double GAP = 4;
  private static final double BESIDE = 12;
  private static final double APART = 11;

  /** The curves of a protein. */
  static Curves of(Facts facts, Protein protein) {
    return new Curves(Plane.of(facts, protein), QuotientLimits.of(facts, protein.analyte()));
  }

  /** What must not leave the field. */
  List<Element> toClipped() {
    List<Element> shapes = new ArrayList<>();
    limits.mean().ifPresent(m -> shapes.add(curve(m, Pen.line(QUIET, 0.9).withDash("7 3 1 3"))));
    limits.lower().ifPresent(low -> shapes.add(curve(low, Pen.line(QUIET, 0.9))));
    shapes.add(curve(limits.upper(), Pen.line(INK, 2)));
    return shapes;
  }

  /** The labels, directly at what they name. */
  List<Element> toLabels() {
    List<Element> labels = new ArrayList<>();
    double limit = end(limits.upper());
    labels.add(rightOf(limit, "limit", Lettering.of(INK).withBold()));
    double mean = limits.mean().map(m -> Math.max(end(m), limit + APART)).orElse(limit);
    limits.mean().ifPresent(m -> labels.add(rightOf(mean, "mean", Lettering.of(QUIET))));
    limits
        .lower()
        .map(low -> Math.max(end(low), mean + APART))
        .ifPresent(y -> labels.add(rightOf(y, "lowest", Lettering.of(QUIET))));
    return labels;
  }

  /**
   * From the limit up to a quotient above it: the part that the blood does not explain, with its
   * share written at the point.
   *
   * @param albumin albumin quotient
   * @param quotient above the limit there
   * @param share as printed
   */
  List<Element> toExcess(double albumin, double quotient, String share) {
    Spot point = plane.at(albumin, quotient);
    Spot foot = plane.at(albumin, limits.upper().at(albumin));
    Lettering letters = Lettering.of(FLUID).withBold().with(Anchor.END);
    List<Element> shapes = new ArrayList<>();
    shapes.add(Svg.line(point, foot, Pen.line(FLUID, 2.2)));
    shapes.addAll(Svg.labelOnPaper(point.to(-BESIDE, -GAP), share, letters));
    return shapes;
  }

  private double end(Hyperbola curve) {
    return plane.y().at(curve.at(plane.x().to()));
  }

  private Element rightOf(double y, String name, Lettering lettering) {
    return Svg.label(new Spot(plane.right() + GAP, y + GAP), name, lettering);
  }

  private Element curve(Hyperbola hyperbola, Pen pen) {
    return Svg.polyline(spots(hyperbola::at), pen);
  }

  /** The curve through the field; it stops where it leaves the field. */
  private List<Spot> spots(DoubleUnaryOperator quotient) {
    return IntStream.rangeClosed(0, STEPS)
        .mapToDouble(i -> plane.x().value((double) i / STEPS))
        .mapToObj(albumin -> plane.at(albumin, quotient.applyAsDouble(albumin)))
        .toList();
  }
}
