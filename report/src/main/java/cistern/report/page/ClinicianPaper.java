package cistern.report.page;

import static java.util.Map.entry;

import cistern.conflict.Conflict;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Problem;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.report.figure.Figure;
import cistern.report.figure.Protein;
import cistern.report.figure.QuotientDiagram;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Results;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import cistern.report.wording.CriteriaWords;
import cistern.report.wording.DifferentialWords;
import cistern.statement.NextStep;
import cistern.statement.Repeatability;
import cistern.statement.Statement;
import cistern.weighing.Weighed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The interpretation for the clinician: the answer, the results beside the diagram of what they
 * show, criteria and what leads away; what the first side cannot hold stands in the annex.
 */
final class ClinicianPaper {

  /** More problems than these are counted on the first side and told in the annex. */
  private static final int TOLD = 4;

  /** As many diagrams as stand beside the table; the others follow in the annex. */
  static final int BESIDE = 2;

  private static final Map<Protein, FindingCode> FRACTIONS =
      Map.ofEntries(
          entry(Protein.IGG, FindingCode.IGG_FRACTION),
          entry(Protein.IGA, FindingCode.IGA_FRACTION),
          entry(Protein.IGM, FindingCode.IGM_FRACTION),
          entry(Protein.KAPPA, FindingCode.KAPPA_FRACTION));

  private final Interpretation said;
  private final Facts facts;

  ClinicianPaper(Interpretation said, Facts facts) {
    this.said = said;
    this.facts = facts;
  }

  /** The sentences that open it. */
  List<Line> answer() {
    return said.statements().stream()
        .filter(s -> !(s instanceof NextStep) && !(s instanceof Repeatability))
        .map(s -> Line.of(s.text()))
        .toList();
  }

  List<Section> sections() {
    List<Section> all = new ArrayList<>();
    next().ifPresent(all::add);
    all.add(results());
    listed("To think of", ThoughtWords.of(said.alerts())).ifPresent(all::add);
    if (!said.alerts().isSilentOfMs()) {
      criteria().ifPresent(all::add);
      flags().ifPresent(all::add);
    }
    disagreements().ifPresent(all::add);
    problems().ifPresent(all::add);
    all.add(Section.of("Cautions", new Paragraphs(cautions())));
    all.addAll(new ClinicianAnnex(said, facts).sections(diagrams()));
    return all;
  }

  /** Beside a spinal block none of the figures that disagree can be leaned on. */
  private Optional<Section> disagreements() {
    return said.alerts().isBlocked()
        ? Optional.empty()
        : listed("What disagrees", said.conflicts().stream().map(Conflict::text).toList());
  }

  private Optional<Section> next() {
    return listed(
        "Next",
        said.statements().stream()
            .filter(NextStep.class::isInstance)
            .map(Statement::text)
            .toList());
  }

  private static Optional<Section> listed(String heading, List<String> sentences) {
    return sentences.isEmpty()
        ? Optional.empty()
        : Optional.of(Section.of(heading, Items.of(sentences)));
  }

  private Section results() {
    ResultRows rows = new ResultRows(said, facts);
    List<Paper.Block> blocks = new ArrayList<>();
    List<Paper.Result> shown = rows.withRulers();
    if (!shown.isEmpty()) {
      blocks.add(
          new Results(
              "Results against their limits", shown, diagrams().stream().limit(BESIDE).toList()));
    }
    List<String> open = new ArrayList<>();
    rows.withoutValue().ifPresent(open::add);
    if (shown.isEmpty()) {
      open.add("No results were given.");
    }
    if (!said.bands().isReported()) {
      open.add("No bands were reported.");
    }
    blocks.add(new Paragraphs(open.stream().map(Line::of).toList()));
    return new Section("Results", blocks);
  }

  /** A diagram for each class that shows synthesis, the most telling first. */
  private List<Figure> diagrams() {
    Findings findings = said.findings();
    return Arrays.stream(Protein.values())
        .filter(p -> findings.get(fraction(p)).isAbove())
        .sorted(Comparator.comparingDouble(p -> p == Protein.KAPPA ? 1 : -share(findings, p)))
        .map(
            p ->
                QuotientDiagram.of(facts, p)
                    .toFigure("diagram-" + p.quotient().code(), findings, List.of()))
        .toList();
  }

  private static FindingCode fraction(Protein protein) {
    return Objects.requireNonNull(FRACTIONS.get(protein));
  }

  private static double share(Findings findings, Protein protein) {
    Finding fraction = findings.get(fraction(protein));
    return fraction.number().orElse(0);
  }

  private Optional<Section> criteria() {
    if (!said.workup().clinical().isEvidenceStated()) {
      return Optional.empty();
    }
    Weighed weighed = said.weighed();
    List<Line> lines = new ArrayList<>();
    weighed.criteria().forEach(r -> lines.add(new Line(CriteriaWords.of(r), r.grounds())));
    weighed.difference().map(Line::of).ifPresent(lines::add);
    lines.add(Line.of(CriteriaWords.puncture(weighed.puncture().effects())));
    weighed.prompts().forEach(p -> lines.add(new Line(p.text(), p.grounds())));
    return Optional.of(Section.of("Criteria, each edition by itself", new Paragraphs(lines)));
  }

  private Optional<Section> flags() {
    List<Line> lines =
        said.weighed().flags().stream()
            .map(f -> new Line(DifferentialWords.of(f), f.grounds()))
            .toList();
    return lines.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Section.of("Less usual in MS: to think of, not to conclude", new Items("", lines)));
  }

  private Optional<Section> problems() {
    List<String> texts = said.problems().stream().map(Problem::text).distinct().toList();
    if (texts.isEmpty()) {
      return Optional.empty();
    }
    List<String> told = new ArrayList<>(texts.subList(0, Math.min(TOLD, texts.size())));
    if (texts.size() > TOLD) {
      told.add("%d more in the annex.".formatted(texts.size() - TOLD));
    }
    return listed("What is wrong with the input", told);
  }

  private List<Line> cautions() {
    String all =
        said.cautions().stream()
            .filter(c -> c != Caution.RESEARCH_ONLY)
            .map(Caution::text)
            .collect(Collectors.joining(" "));
    return List.of(Line.of(all));
  }

  /** The numbers of a figure as a table of the annex. */
  static Table table(Figure figure) {
    List<Row> rows =
        figure.table().rows().stream().map(cells -> Row.of(cells.toArray(String[]::new))).toList();
    return new Table(figure.title() + ", in numbers", figure.table().headings(), rows);
  }

  /** Figures and their tables. */
  static List<Paper.Block> withTables(List<Figure> figures) {
    return figures.stream().<Paper.Block>flatMap(f -> Stream.of(new Picture(f), table(f))).toList();
  }
}
