package cistern.report.figure;

import static cistern.report.look.Token.INK;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.look.ReportFacts;
import cistern.report.markup.Element;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A protein's quotient against the albumin quotient, both logarithmic, with the published curves,
 * the age limit, this puncture with its uncertainty, and those before it.
 *
 * @param protein whose quotient it is
 * @param curves the published curves
 * @param mark how a puncture is drawn
 */
public record QuotientDiagram(Protein protein, Curves curves, PunctureMark mark) {

  /** The diagram of a protein under some facts. */
  public static QuotientDiagram of(Facts facts, Protein protein) {
    Facts all = ReportFacts.of(facts);
    Curves curves = Curves.of(all, protein);
    return new QuotientDiagram(protein, curves, PunctureMark.of(all, curves.plane()));
  }

  /**
   * The figure of a puncture.
   *
   * @param id unique on the page
   */
  public Figure toFigure(String id, Findings findings, List<EarlierPuncture> earlier) {
    Finding albumin = findings.get(FindingCode.ALBUMIN_QUOTIENT);
    Finding quotient = findings.get(protein.quotient());
    DiagramText text = new DiagramText(protein, curves.limits());
    List<Element> shapes = new ArrayList<>();
    String clip = id + "-field";
    shapes.add(clip(clip));
    shapes.add(
        Element.of("g")
            .with("clip-path", "url(#%s)".formatted(clip))
            .with(curves.toClipped())
            .with(mark.toRegion(albumin, quotient)));
    shapes.addAll(Axes.of(curves.plane(), protein));
    shapes.addAll(ageLimit(albumin));
    shapes.addAll(curves.toLabels());
    for (EarlierPuncture one : earlier) {
      shapes.addAll(
          mark.toEarlier(
              one.findings().get(FindingCode.ALBUMIN_QUOTIENT),
              one.findings().get(protein.quotient()),
              one.number()));
    }
    shapes.addAll(excess(albumin, quotient, findings.get(protein.fraction())));
    shapes.addAll(mark.toMark(albumin, quotient));
    if (!quotient.hasValue() || !albumin.hasValue()) {
      shapes.addAll(missing());
    }
    return new Figure(
        id,
        text.title(findings),
        text.description(findings, earlier),
        new Spot(Plane.WIDTH, Plane.HEIGHT),
        shapes,
        text.table(findings, earlier));
  }

  /** What lies over the limit, where both quotients are exact and on the scale. */
  private List<Element> excess(Finding albumin, Finding quotient, Finding fraction) {
    Plane plane = curves.plane();
    boolean isDrawn =
        quotient.isAbove()
            && fraction.number().isPresent()
            && albumin.number().isPresent()
            && quotient.number().isPresent()
            && plane.x().isOn(albumin.number().getAsDouble())
            && plane.y().isOn(quotient.number().getAsDouble());
    return isDrawn
        ? curves.toExcess(
            albumin.number().getAsDouble(),
            quotient.number().getAsDouble(),
            ValueWords.value(fraction))
        : List.of();
  }

  private Element clip(String id) {
    Plane plane = curves.plane();
    return Element.of(
        "defs",
        Element.of("clipPath", Svg.rectangle(plane.origin(), plane.farCorner(), Pen.area(INK)))
            .with("id", id));
  }

  private List<Element> missing() {
    Plane plane = curves.plane();
    Spot middle = new Spot((plane.left() + plane.right()) / 2, (plane.top() + plane.bottom()) / 2);
    return Svg.labelOnPaper(
        middle, "no point: not measured", Lettering.of(INK).with(Anchor.MIDDLE).withBold());
  }

  private List<Element> ageLimit(Finding albumin) {
    Optional<Threshold> limit = albumin.limits().above();
    Plane plane = curves.plane();
    if (limit.isEmpty() || !plane.x().isOn(limit.get().at())) {
      return List.of();
    }
    double x = plane.x().at(limit.get().at());
    return List.of(
        Svg.line(
            new Spot(x, plane.bottom()),
            new Spot(x, plane.top() - 4),
            Pen.line(INK, 0.9).withDash("3 2")),
        Svg.label(
            new Spot(x, plane.top() - 7),
            "age limit " + Printed.quotient(limit.get().at()),
            Lettering.of(INK).with(Anchor.MIDDLE)));
  }
}
