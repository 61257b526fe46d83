package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.nothing;

import cistern.bands.BandReading;
import cistern.bands.BandVerdict;
import cistern.clinic.account.Permission;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Verdict;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.report.figure.EarlierPuncture;
import cistern.report.figure.Figure;
import cistern.report.figure.Protein;
import cistern.report.figure.QuotientDiagram;
import cistern.report.figure.Ruler;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.wording.BandWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What the rows of a case's table unfold to: the diagram, the finding in a sentence, what its limit
 * comes from, what else is computed of the analyte, and what the row held before. Only the rows
 * that are unfolded are made.
 */
final class Unfolded {

  /** The field that names the rows, with spaces between them. */
  static final String FIELD = "unfolded";

  /** The button that unfolds a row or folds it again. */
  static final String ROW = "row";

  /** The row of the bands. */
  static final String BANDS = "bands";

  static final String BAND_TERM = "oligoclonal bands";

  private final CaseContext context;
  private final PageRequest visit;
  private final Interpretation said;
  private final Set<String> rows;
  private final Optional<EarlierRows> earlier;

  /**
   * The rows of a visit.
   *
   * @param said what the results say, as they stand in the fields
   */
  Unfolded(CaseContext context, PageRequest visit, OpenCase open, Interpretation said) {
    this.context = context;
    this.visit = visit;
    this.said = said;
    this.rows = rows(visit);
    this.earlier =
        rows.isEmpty() ? Optional.empty() : Optional.of(new EarlierRows(context, visit, open));
  }

  /** The rows that a visit names; none for who may not read what they say. */
  private static Set<String> rows(PageRequest visit) {
    return Arrays.stream(visit.field(FIELD).split(" ", -1))
        .filter(row -> visit.isAllowed(Permission.READ_REPORT))
        .filter(row -> row.equals(BANDS) || Analyte.parse(row).isPresent())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** The address on which the same rows are unfolded but for one, which is the other way round. */
  static String toggled(PageRequest visit, String row) {
    Set<String> then = rows(visit);
    if (!then.remove(row)) {
      then.add(row);
    }
    return "/cases/%s?%s=%s#row-%s".formatted(visit.path("id"), FIELD, String.join("+", then), row);
  }

  /** Which rows are unfolded, for the form to carry. */
  Element toField() {
    return Html.hidden(FIELD, String.join(" ", rows));
  }

  /**
   * The name of a row, to be pressed where the row has something to unfold. Who types presses a
   * button of the form, so that nothing typed is lost without script; who reads follows a link.
   */
  Node name(String row, String term, boolean isAsked) {
    boolean isOpen = rows.contains(row);
    if (!isAsked && !isOpen) {
      return Html.text(term);
    }
    Element name =
        visit.isAllowed(Permission.ENTER_RESULTS)
            ? Element.of("button", term)
                .with("type", "submit")
                .with("name", ROW)
                .with("value", row)
                .with("formaction", "/cases/" + visit.path("id") + "/results/row")
            : Html.link(toggled(visit, row), term);
    return name.with("class", "unfolds")
        .with("aria-expanded", Boolean.toString(isOpen))
        .with("aria-controls", "more-" + row);
  }

  /** The row below a row, which stands empty and unseen until that is unfolded. */
  Element below(String row, int columns) {
    Element below =
        Element.of(
                "tr",
                Element.of("td", content(row))
                    .with("colspan", Integer.toString(columns))
                    .with("id", "more-" + row))
            .with("class", "more");
    return rows.contains(row) ? below : below.with("hidden", "hidden");
  }

  /** What stands in the row below; nothing where it is not unfolded. */
  Node content(String row) {
    if (!rows.contains(row)) {
      return nothing();
    }
    return Analyte.parse(row).map(this::content).orElseGet(this::bands);
  }

  private Node content(Analyte analyte) {
    Optional<Finding> leading = PairTable.finding(said, analyte);
    List<Node> parts = new ArrayList<>();
    leading.ifPresent(
        finding ->
            parts.add(division("why-beside", drawn(analyte, finding), Why.list(finding, said))));
    List<Node> others =
        said.findings().all().stream()
            .filter(f -> f.code().analyte() == analyte && f.isAsked() && f.hasValue())
            .filter(f -> leading.filter(f::equals).isEmpty())
            .map(this::other)
            .toList();
    parts.add(listed("Also computed from it", others));
    parts.add(before(e -> e.of(analyte)));
    return new Fragment(parts);
  }

  /** The diagram of a class that has one, else the value against its limit, drawn large. */
  private Element drawn(Analyte analyte, Finding finding) {
    Facts facts = context.medicine().facts();
    return Arrays.stream(Protein.values())
        .filter(p -> p.analyte() == analyte && said.findings().get(p.quotient()).isAsked())
        .findFirst()
        .map(
            p ->
                QuotientDiagram.of(facts, p)
                    .toFigure("diagram-" + p.quotient().code(), said.findings(), punctures()))
        .map(diagram -> figure(diagram, diagram.title()))
        .orElseGet(
            () -> {
              Figure ruler = ruler("large-", finding);
              return figure(ruler, ruler.description() + ".").with("class", "large-ruler");
            });
  }

  private static Element figure(Figure figure, String caption) {
    return Element.of("figure", figure.toSvg(), Element.of("figcaption", caption));
  }

  private Figure ruler(String prefix, Finding finding) {
    return Ruler.of(context.medicine().facts())
        .toFigure(prefix + finding.code().code(), finding, said.panel().panel());
  }

  /** Another finding of the analyte: its ruler, its sentence, and a way to its formula. */
  private Node other(Finding finding) {
    Figure ruler = ruler("also-", finding);
    String why = "/cases/" + visit.path("id") + "/says#" + Why.id(finding.code());
    return Fragment.of(
        ruler.toSvg(),
        Element.of("span", ruler.description() + ". ")
            .with(Html.link(why, "Why").with("aria-label", "Why: " + finding.code().term())));
  }

  private static Node listed(String heading, List<? extends Node> items) {
    return items.isEmpty()
        ? nothing()
        : division("also", Element.of("h2", heading), Html.list(items, ""));
  }

  private Node before(Function<EarlierRows, List<Node>> row) {
    return listed("Before", earlier.map(row).orElse(List.of()));
  }

  private List<EarlierPuncture> punctures() {
    return earlier.map(EarlierRows::punctures).orElse(List.of());
  }

  /** The name of the row of the bands. */
  Node bandName() {
    return name(BANDS, BAND_TERM, said.bands().isReported());
  }

  /** What the bands amount to. */
  Node bandVerdict() {
    BandVerdict verdict = said.bands().verdict();
    return said.bands().isReported()
        ? Fragment.of(PairTable.mark(shape(verdict)), Html.text(" " + verdict.word()))
        : nothing();
  }

  private static Verdict shape(BandVerdict verdict) {
    return switch (verdict) {
      case POSITIVE -> Verdict.ABOVE;
      case NEGATIVE -> Verdict.WITHIN;
      case BORDERLINE -> Verdict.BORDERLINE;
      case UNDETERMINED -> Verdict.UNDETERMINED;
    };
  }

  private Node bands() {
    BandReading bands = said.bands();
    return Fragment.of(
        Html.list(BandWords.remarks(bands).stream().map(Html::text).toList(), "Not reported."),
        Element.of("p", "Positive from %d bands in the CSF only. ".formatted(bands.cutOff()))
            .with(Why.sources(bands.grounds()))
            .withText(" (" + bands.grounds().status().word() + ")"),
        before(EarlierRows::ofBands));
  }
}
