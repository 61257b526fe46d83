package cistern.clinic.casework;

import static cistern.clinic.web.Html.nothing;

import cistern.clinic.web.Html;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.FindingCode.Kind;
import cistern.finding.Verdict;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import cistern.report.figure.Ruler;
import cistern.report.figure.Spot;
import cistern.report.figure.VerdictMark;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The results of one puncture: a row an analyte, the two fluids side by side, and beside them what
 * the row amounts to against its limit.
 *
 * @param said what the results say, as they stand in the fields
 * @param facts in force
 * @param mayRead whether the verdicts may be read
 * @param cell the field of a sample, or its value where nothing may be typed
 * @param unfolded what the rows unfold to
 */
record PairTable(
    Interpretation said,
    Facts facts,
    boolean mayRead,
    Function<Sample, Node> cell,
    Unfolded unfolded) {

  private static final int COLUMNS = 5;

  /** What most work-ups hold; the others unfold. */
  private static final Set<Analyte> USUAL =
      Collections.unmodifiableSet(
          EnumSet.of(
              Analyte.ALBUMIN,
              Analyte.IGG,
              Analyte.IGA,
              Analyte.IGM,
              Analyte.KAPPA,
              Analyte.TOTAL_PROTEIN,
              Analyte.GLUCOSE,
              Analyte.LACTATE,
              Analyte.LEUKOCYTES,
              Analyte.ERYTHROCYTES,
              Analyte.MEASLES_IGG,
              Analyte.RUBELLA_IGG,
              Analyte.VARICELLA_ZOSTER_IGG));

  /** Which quantity speaks for an analyte: the first of these that there is. */
  private static final List<Kind> LEADING =
      List.of(Kind.QUOTIENT, Kind.ANTIBODY_INDEX, Kind.RATIO, Kind.CSF, Kind.SERUM, Kind.INDEX);

  /** Its quotient has no published limit that all use; its index has. */
  private static final Set<Analyte> BY_INDEX =
      Collections.unmodifiableSet(EnumSet.of(Analyte.KAPPA, Analyte.LAMBDA));

  private static final double MARK_ROOM = 6;

  /** The rows that are always shown, with a row of its own for the bands. */
  Element usual(Node bands) {
    List<Element> rows = new ArrayList<>();
    analytes(true).flatMap(this::rows).forEach(rows::add);
    if (bands instanceof Element row) {
      rows.add(row);
      rows.addAll(below(Unfolded.BANDS));
    }
    return table("Results of both fluids, as the laboratory printed them", rows);
  }

  /** The rows that unfold. */
  Element others() {
    return table("Other results", analytes(false).flatMap(this::rows).toList());
  }

  private Stream<Analyte> analytes(boolean isUsual) {
    return Arrays.stream(Analyte.values()).filter(a -> isShown(a) == isUsual);
  }

  private boolean isShown(Analyte analyte) {
    return USUAL.contains(analyte)
        || said.panel().panel().has(Sample.csf(analyte))
        || said.panel().panel().has(new Sample(analyte, other(analyte)));
  }

  /** The fluid beside the spinal fluid in which an analyte is measured. */
  static Compartment other(Analyte analyte) {
    return switch (analyte.family()) {
      case PROTEIN, IMMUNOGLOBULIN, LIGHT_CHAIN, METABOLITE, SPECIFIC_ANTIBODY -> Compartment.SERUM;
      case CELLS, FRACTION -> Compartment.BLOOD;
    };
  }

  private Element table(String caption, List<Element> rows) {
    List<String> head =
        mayRead
            ? List.of("Analyte", "CSF", "Serum or blood", "Against its limit", "Verdict")
            : List.of("Analyte", "CSF", "Serum or blood");
    return Element.of(
            "table",
            Element.of("caption", caption),
            Element.of(
                "thead",
                Element.of("tr")
                    .with(
                        head.stream().map(h -> Element.of("th", h).with("scope", "col")).toList())),
            Element.of("tbody").with(rows))
        .with("class", "pairs");
  }

  private Stream<Element> rows(Analyte analyte) {
    return Stream.concat(Stream.of(row(analyte)), below(analyte.code()).stream());
  }

  /** What a row unfolds to, for those who may read verdicts. */
  private List<Element> below(String row) {
    return mayRead ? List.of(unfolded.below(row, COLUMNS)) : List.of();
  }

  private Node name(Analyte analyte) {
    return mayRead
        ? unfolded.name(analyte.code(), analyte.term(), finding(said, analyte).isPresent())
        : Html.text(analyte.term());
  }

  private Element row(Analyte analyte) {
    String id = analyte.code();
    List<Node> cells = new ArrayList<>();
    cells.add(Element.of("th", name(analyte)).with("scope", "row").with("id", "name-" + id));
    cells.add(Element.of("td", cell.apply(Sample.csf(analyte))).with("class", "csf"));
    cells.add(
        Element.of("td", cell.apply(new Sample(analyte, other(analyte)))).with("class", "blood"));
    if (mayRead) {
      cells.add(
          Element.of("td", against(analyte)).with("class", "against").with("id", "against-" + id));
      cells.add(
          Element.of("td", verdict(analyte)).with("class", "verdict").with("id", "verdict-" + id));
    }
    return Element.of("tr").with("id", "row-" + id).with(cells);
  }

  /** What changes in the rows while somebody types: each part names the cell that it belongs in. */
  Node live() {
    if (!mayRead) {
      return nothing();
    }
    List<Node> parts = new ArrayList<>();
    for (Analyte analyte : Analyte.values()) {
      String id = analyte.code();
      parts.add(part("name-" + id, name(analyte)));
      parts.add(part("against-" + id, against(analyte)));
      parts.add(part("verdict-" + id, verdict(analyte)));
      parts.add(part("more-" + id, unfolded.content(id)));
    }
    parts.add(part("name-" + Unfolded.BANDS, unfolded.bandName()));
    parts.add(part("verdict-" + Unfolded.BANDS, unfolded.bandVerdict()));
    parts.add(part("more-" + Unfolded.BANDS, unfolded.content(Unfolded.BANDS)));
    return new Fragment(parts);
  }

  private static Element part(String at, Node content) {
    return Element.of("div", content).with("data-at", at);
  }

  /** The quantity that speaks for an analyte, where it was measured. */
  static Optional<Finding> finding(Interpretation said, Analyte analyte) {
    Stream<Kind> kinds = BY_INDEX.contains(analyte) ? Stream.of(Kind.INDEX) : LEADING.stream();
    return kinds
        .flatMap(kind -> FindingCode.find(kind, analyte).stream())
        .map(code -> said.findings().get(code))
        .filter(Finding::isAsked)
        .findFirst();
  }

  private Node against(Analyte analyte) {
    Optional<Finding> found = finding(said, analyte);
    if (found.isEmpty()) {
      return nothing();
    }
    Finding finding = found.get();
    if (!finding.hasValue()) {
      return Element.of("span", finding.note()).with("class", "quiet");
    }
    String limit = finding.limits().isKnown() ? "limit " + ValueWords.limit(finding) : "no limit";
    return Fragment.of(
        Ruler.of(facts)
            .toFigure("ruler-" + finding.code().code(), finding, said.panel().panel())
            .toSvg(),
        Element.of("span", name(finding) + ValueWords.valueWithUnit(finding))
            .with("class", "amount"),
        Element.of("span", limit).with("class", "quiet"));
  }

  /** What the number is, where it is not the measured one itself. */
  private static String name(Finding finding) {
    return switch (finding.code().kind()) {
      case QUOTIENT -> "quotient ";
      case INDEX, ANTIBODY_INDEX -> "index ";
      case RATIO -> "ratio ";
      case CSF, SERUM, CORRECTED, FRACTION, LOCAL, RATE, REACTION -> "";
    };
  }

  private Node verdict(Analyte analyte) {
    return finding(said, analyte)
        .filter(f -> f.limits().isKnown() || !f.hasValue())
        .<Node>map(f -> Fragment.of(mark(f.verdict()), Html.text(" " + f.verdict().word())))
        .orElseGet(Html::nothing);
  }

  /** The shape of a verdict. */
  static Element mark(Verdict verdict) {
    return Element.of("svg")
        .with("class", "mark-shape")
        .with("viewBox", "0 0 12 12")
        .with("width", "12")
        .with("height", "12")
        .with("aria-hidden", "true")
        .with(VerdictMark.PLAIN.of(verdict, new Spot(MARK_ROOM, MARK_ROOM)));
  }
}
