package cistern.report.page;

import cistern.finding.Chances;
import cistern.finding.Finding;
import cistern.finding.Verdict;
import cistern.report.figure.Figure;
import cistern.report.figure.Ruler;
import cistern.report.figure.Spot;
import cistern.report.figure.VerdictMark;
import cistern.report.look.ReportFacts;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The strip of values: one row a value on a ruler centred on its limit, with limit, interval, rule
 * and source in the margin beside it.
 *
 * @param sheet the page
 * @param ruler the ruler that all rows share
 * @param remarks lettered while the rows are written
 */
record ValuesBlock(Sheet sheet, Ruler ruler, Remarks remarks) {

  private static final double MARK_ROOM = 6;
  private static final String NEAR = "page.near-limit.chance";

  static Node of(Sheet sheet) {
    return new ValuesBlock(sheet, Ruler.of(sheet.facts()), new Remarks()).toSection();
  }

  private Node toSection() {
    List<Finding> valued = findings().stream().filter(Finding::hasValue).toList();
    return valued.isEmpty()
        ? Html.section(
            "values", "Values", Html.paragraph("Nothing could be computed."), withoutValue())
        : Html.section(
            "values",
            "Values against their limits",
            table(valued),
            remarks.toParagraph(),
            withoutValue());
  }

  private List<Finding> findings() {
    return sheet.interpretation().findings().all().stream().filter(Finding::isAsked).toList();
  }

  private Element table(List<Finding> valued) {
    List<Node> bodies = new ArrayList<>();
    for (FindingGroup group : FindingGroup.values()) {
      List<Finding> of = valued.stream().filter(f -> FindingGroup.of(f.code()) == group).toList();
      if (!of.isEmpty()) {
        Element body = Element.of("tbody");
        Element named = sheet.isPaper() ? body : body.with(heading(group));
        bodies.add(named.with(of.stream().map(this::row).toList()));
      }
    }
    return Element.of("table").with("class", "strip").with(head()).with(bodies);
  }

  private Element head() {
    return Element.of(
        "thead",
        Element.of(
            "tr",
            column("finding", Element.of("span", "Finding")),
            column("value", Element.of("span", "Value")),
            column("interval", Element.of("span", "95 % interval")),
            column("ruler", drawing(ruler.toHead("ruler-head"))),
            column("verdict", Element.of("span", "Verdict")),
            column("margin", Element.of("span", "Limit, rule, source"))));
  }

  private static Element column(String cssClass, Node content) {
    return Element.of("th", content).with("scope", "col").with("class", cssClass);
  }

  private static Element heading(FindingGroup group) {
    return Element.of(
            "tr", Element.of("th", group.heading()).with("scope", "rowgroup").with("colspan", "6"))
        .with("class", "group");
  }

  private Element row(Finding finding) {
    Figure drawn =
        ruler.toFigure(
            "ruler-" + finding.code().code(), finding, sheet.interpretation().panel().panel());
    return Element.of(
        "tr",
        Element.of("th", finding.code().term()).with("scope", "row").with("class", "finding"),
        Element.of("td", ValueWords.value(finding))
            .with("class", "value")
            .withText(" ")
            .with(Html.span("unit", ValueWords.unit(finding.code()))),
        Element.of("td", ValueWords.interval(finding)).with("class", "interval"),
        Element.of("td", drawing(drawn)).with("class", "ruler"),
        Element.of("td", mark(finding.verdict()))
            .with("class", "verdict")
            .withText(" " + finding.verdict().word()),
        Element.of("td", margin(finding)).with("class", "margin"));
  }

  private Element drawing(Figure figure) {
    Element svg = figure.toSvg();
    return sheet.isPaper() ? svg.with("alt", figure.description()) : svg;
  }

  private Element mark(Verdict verdict) {
    Element svg =
        Element.of("svg")
            .with("xmlns", "http://www.w3.org/2000/svg")
            .with("class", "mark")
            .with("viewBox", "0 0 12 12")
            .with("width", "12")
            .with("height", "12")
            .with("aria-hidden", "true")
            .with(VerdictMark.PLAIN.of(verdict, new Spot(MARK_ROOM, MARK_ROOM)));
    return sheet.isPaper() ? svg.with("alt", verdict.word()) : svg;
  }

  private Node margin(Finding finding) {
    List<String> parts = new ArrayList<>();
    parts.add(finding.limits().isKnown() ? ValueWords.limit(finding) : "no limit known");
    ValueWords.greyZone(finding).ifPresent(g -> parts.add("grey " + g));
    ValueWords.rule(finding).ifPresent(parts::add);
    String kept =
        Stream.of(chance(finding), finding.note())
            .filter(r -> !r.isEmpty())
            .collect(Collectors.joining(Remarks.BETWEEN));
    return Fragment.of(
        new Text(String.join("; ", parts) + " "),
        sheet.sources().mark(finding.grounds()),
        new Text(" "),
        remarks.mark(kept));
  }

  /** In words what measurement error leaves open; empty where it leaves nothing open. */
  private String chance(Finding finding) {
    double least = ReportFacts.of(sheet.facts()).number(NEAR);
    OptionalDouble above = finding.uncertainty().probabilityAbove();
    return above.isPresent() && Math.min(above.getAsDouble(), 1 - above.getAsDouble()) >= least
        ? Chances.toLieAbove(above.getAsDouble())
        : "";
  }

  /** What could not be computed, gathered under its reason. */
  private Node withoutValue() {
    Map<String, String> termsByReason =
        findings().stream()
            .filter(f -> !f.hasValue())
            .collect(
                Collectors.groupingBy(
                    Finding::note,
                    LinkedHashMap::new,
                    Collectors.mapping(f -> f.code().term(), Collectors.joining(", "))));
    if (termsByReason.isEmpty()) {
      return Fragment.of();
    }
    String all =
        termsByReason.entrySet().stream()
            .map(e -> "%s (%s)".formatted(e.getValue(), e.getKey()))
            .collect(Collectors.joining("; "));
    return Element.of("p", mark(Verdict.UNDETERMINED))
        .with("class", "undetermined")
        .withText(" Undetermined: " + all + ".");
  }
}
