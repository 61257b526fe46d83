package cistern.report.page;

import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.report.figure.Figure;
import cistern.report.figure.FigureTable;
import cistern.report.figure.Protein;
import cistern.report.figure.QuotientDiagram;
import cistern.report.figure.Svg;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The quotient diagrams of what was measured, and a sentence about what was not; on paper, where a
 * row holds three, the weights of the findings beside them.
 */
final class DiagramsBlock {

  /** Three figures stand in a row of 178 mm; in millimetres. */
  private static final double PAPER_WIDTH = 55;

  private DiagramsBlock() {}

  static Node of(Sheet sheet) {
    List<Figure> figures = figures(sheet);
    Node missing = missing(sheet.interpretation().findings());
    String heading =
        "Quotient diagrams" + (late(sheet).isPresent() ? ", and what each finding weighs" : "");
    if (figures.isEmpty()) {
      return Html.section("diagrams", heading, missing);
    }
    return Html.section(
        "diagrams",
        heading,
        Html.division("figures").with(figures.stream().map(f -> figure(sheet, f)).toList()),
        missing);
  }

  private static List<Figure> figures(Sheet sheet) {
    Findings findings = sheet.interpretation().findings();
    Stream<Figure> diagrams =
        Arrays.stream(Protein.values())
            .filter(p -> isDrawn(findings, p))
            .map(
                p ->
                    QuotientDiagram.of(sheet.facts(), p)
                        .toFigure("diagram-" + p.quotient().code(), findings, List.of()));
    return Stream.concat(diagrams, late(sheet).stream()).toList();
  }

  /** What each finding weighs, where it does not stand with the differential. */
  private static Optional<Figure> late(Sheet sheet) {
    return DifferentialBlock.isLate(sheet) ? DifferentialBlock.bars(sheet) : Optional.empty();
  }

  private static boolean isDrawn(Findings findings, Protein protein) {
    return findings.get(protein.quotient()).hasValue()
        && findings.get(FindingCode.ALBUMIN_QUOTIENT).hasValue();
  }

  /** A figure with its title and, on a screen, its numbers behind a click. */
  static Element figure(Sheet sheet, Figure figure) {
    if (sheet.isPaper()) {
      return Html.division(
          "figure",
          drawn(figure).with("alt", figure.title() + ". " + figure.description()),
          Html.paragraph(figure.title()).with("class", "caption"));
    }
    Element unfolds =
        Element.of("details", Element.of("summary", "The same as a table"), table(figure));
    return Element.of(
        "figure",
        figure.toSvg(),
        Element.of("figcaption", Html.paragraph(figure.title()), unfolds));
  }

  /** As high on paper as the width of a third of a row asks for. */
  private static Element drawn(Figure figure) {
    double height = PAPER_WIDTH * figure.size().y() / figure.size().x();
    return figure
        .toSvg()
        .with("style", "width:%smm;height:%smm".formatted(PAPER_WIDTH, Svg.number(height)));
  }

  /** The numbers of a figure; its caption names it. */
  static Element table(Figure figure) {
    FigureTable data = figure.table();
    Element head =
        Element.of(
            "tr",
            data.headings().stream()
                .map(h -> Element.of("th", h).with("scope", "col"))
                .toArray(Node[]::new));
    List<Element> rows =
        data.rows().stream()
            .map(
                cells ->
                    Element.of("tr", Element.of("th", cells.getFirst()).with("scope", "row"))
                        .with(cells.stream().skip(1).map(c -> Element.of("td", c)).toList()))
            .toList();
    return Html.division(
        "scroll",
        Element.of("table", Element.of("caption", figure.title()))
            .with("class", "numbers")
            .with(Element.of("thead", head), Element.of("tbody").with(rows)));
  }

  /** On paper, where nothing unfolds, the tables of the figures stand at the end. */
  static Node tables(Sheet sheet) {
    List<Figure> figures =
        Stream.concat(
                figures(sheet).stream(),
                late(sheet).isPresent() ? Stream.of() : DifferentialBlock.bars(sheet).stream())
            .toList();
    if (!sheet.isPaper() || figures.isEmpty()) {
      return Fragment.of();
    }
    return Html.section("tables", "The figures as tables")
        .with(figures.stream().map(DiagramsBlock::table).toList());
  }

  private static Node missing(Findings findings) {
    List<Protein> missing =
        Arrays.stream(Protein.values()).filter(p -> !isDrawn(findings, p)).toList();
    if (missing.isEmpty()) {
      return Fragment.of();
    }
    String names = missing.stream().map(Protein::term).collect(Collectors.joining(", "));
    String reason =
        findings.get(FindingCode.ALBUMIN_QUOTIENT).hasValue()
            ? "not measured in both fluids"
            : "there is no albumin quotient to draw against";
    return Html.paragraph("Not drawn: %s (%s).".formatted(names, reason)).with("class", "left-out");
  }
}
