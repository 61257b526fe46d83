package cistern.report.figure;

import static cistern.report.look.Token.BLOOD_TINT;
import static cistern.report.look.Token.FLUID;
import static cistern.report.look.Token.HAIRLINE;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.QUIET;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Threshold;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Compartment;
import cistern.panel.Panel;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.look.ReportFacts;
import cistern.report.markup.Element;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One row of the strip of values: a ruler with the limit in its middle, logarithmic wherever the
 * limit is positive; where the limit is zero, a linear ruler that begins in the middle and ends at
 * the whole (100 %, or the whole concentration in CSF).
 *
 * @param span the ruler runs from the limit divided by this to the limit times this
 */
public record Ruler(double span) {

  /** Width of a ruler in user units. */
  static final double WIDTH = 160;

  /** Height of a ruler in user units. */
  static final double HEIGHT = 20;

  private static final double MIDDLE = HEIGHT / 2;
  private static final double MARGIN = 8;
  private static final double CENTRE = WIDTH / 2;
  private static final Lettering SMALL = new Lettering(INK, 11.5, Anchor.END, false);

  /** The ruler under some facts. */
  public static Ruler of(Facts facts) {
    return new Ruler(ReportFacts.of(facts).number("figure.strip.span"));
  }

  /**
   * The figure of one finding.
   *
   * @param id unique on the page
   * @param panel the measured values, one of which is the whole that a local amount is part of
   */
  public Figure toFigure(String id, Finding finding, Panel panel) {
    String sentence = RulerText.of(finding);
    return new Figure(
        id,
        finding.code().term(),
        sentence,
        new Spot(WIDTH, HEIGHT),
        shapes(finding, whole(finding, panel)),
        RulerText.table(finding));
  }

  /** What fills a ruler with limit zero: 1 for a fraction, the CSF concentration for an amount. */
  private static double whole(Finding finding, Panel panel) {
    return finding.inputs().stream()
        .filter(s -> finding.code().unit() != CanonicalUnit.ONE && s.in() == Compartment.CSF)
        .findFirst()
        .flatMap(panel::find)
        .map(m -> m.value().upper())
        .filter(v -> v > 0 && Double.isFinite(v))
        .orElse(1.0);
  }

  private List<Element> shapes(Finding finding, double whole) {
    Optional<Threshold> limit = finding.limits().above().or(() -> finding.limits().within());
    if (!finding.hasValue()) {
      return List.of(note("not computed"));
    }
    if (limit.isEmpty()) {
      return List.of(note("no limit to compare with"));
    }
    Scale scale = scale(limit.get().at(), whole);
    List<Element> shapes = new ArrayList<>();
    shapes.add(
        Svg.line(
            new Spot(scale.at(scale.from()), MIDDLE),
            new Spot(scale.at(scale.to()), MIDDLE),
            Pen.line(HAIRLINE, 1)));
    shapes.addAll(greyZone(scale, finding));
    shapes.addAll(limits(scale, finding));
    shapes.addAll(interval(scale, finding));
    shapes.addAll(estimate(scale, finding));
    return shapes;
  }

  private Scale scale(double limit, double whole) {
    return limit > 0
        ? new LogScale(limit / span, limit * span, MARGIN, WIDTH - MARGIN)
        : new LinearScale(0, whole, CENTRE, WIDTH - MARGIN);
  }

  private static Element note(String text) {
    return Svg.label(
        new Spot(CENTRE, MIDDLE + 4), text, new Lettering(QUIET, 11, Anchor.MIDDLE, false));
  }

  private static List<Element> greyZone(Scale scale, Finding finding) {
    Optional<Threshold> from = finding.limits().borderline();
    Optional<Threshold> to = finding.limits().above();
    if (from.isEmpty() || to.isEmpty()) {
      return List.of();
    }
    return List.of(
        Svg.rectangle(
            new Spot(scale.at(from.get().at()), MIDDLE - 7),
            new Spot(scale.at(to.get().at()), MIDDLE + 7),
            Pen.area(BLOOD_TINT)));
  }

  private static List<Element> limits(Scale scale, Finding finding) {
    List<Element> lines = new ArrayList<>();
    finding.limits().above().ifPresent(c -> lines.add(limit(scale, c, 1.4)));
    finding
        .limits()
        .within()
        .filter(c -> scale.isOn(c.at()))
        .ifPresent(c -> lines.add(limit(scale, c, 0.8)));
    return lines;
  }

  private static Element limit(Scale scale, Threshold cut, double width) {
    double x = scale.at(cut.at());
    return Svg.line(new Spot(x, MIDDLE - 8), new Spot(x, MIDDLE + 8), Pen.line(INK, width));
  }

  private static List<Element> interval(Scale scale, Finding finding) {
    return finding
        .uncertainty()
        .interval95()
        .filter(i -> i.lower() < i.upper())
        .map(
            i ->
                Svg.line(
                    new Spot(scale.at(i.lower()), MIDDLE),
                    new Spot(scale.at(i.upper()), MIDDLE),
                    Pen.line(FLUID, 4)))
        .stream()
        .toList();
  }

  private static List<Element> estimate(Scale scale, Finding finding) {
    if (finding.number().isEmpty()) {
      return finding.value().map(v -> CensoredSpan.of(scale, MIDDLE, v)).orElse(List.of());
    }
    double value = finding.number().getAsDouble();
    return scale.isOn(value)
        ? VerdictMark.PLAIN.of(finding.verdict(), new Spot(scale.at(value), MIDDLE))
        : offScale(scale, finding, value);
  }

  private static List<Element> offScale(Scale scale, Finding finding, double value) {
    boolean isOver = scale.isOver(value);
    double x = isOver ? WIDTH - 1 : 1;
    Lettering letters = SMALL.with(isOver ? Anchor.END : Anchor.START).withBold();
    List<Element> shapes = new ArrayList<>();
    shapes.add(Arrow.of(new Spot(x, MIDDLE), new Spot(isOver ? 1 : -1, 0)));
    shapes.addAll(
        Svg.labelOnPaper(
            new Spot(isOver ? x - 11 : x + 11, MIDDLE + 3.5), ValueWords.value(finding), letters));
    return shapes;
  }
}
