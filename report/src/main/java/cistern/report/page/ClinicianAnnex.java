package cistern.report.page;

import cistern.criteria.Checked;
import cistern.criteria.CriteriaResult;
import cistern.differential.DifferentialResult;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.interpretation.Interpretation;
import cistern.report.figure.Figure;
import cistern.report.figure.WeightBars;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Place;
import cistern.report.paper.Paper.Section;
import cistern.report.wording.DifferentialWords;
import cistern.report.wording.ProbabilityWords;
import cistern.report.wording.TestWords;
import cistern.statement.Repeatability;
import cistern.statement.Statement;
import cistern.weighing.NextItem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What the first side of the clinician's paper rests on: it unfolds on a screen. */
final class ClinicianAnnex {

  private static final int MOST_NEXT = 5;

  private final Interpretation said;
  private final DifferentialResult result;

  ClinicianAnnex(Interpretation said, Facts facts) {
    this.said = said;
    this.result = said.weighed().differential();
  }

  List<Section> sections(List<Figure> diagrams) {
    List<Section> all = new ArrayList<>();
    new MeasuredValues(said)
        .toTable()
        .map(t -> Section.annex("What was measured", t))
        .ifPresent(all::add);
    tests().map(t -> Section.annex("Microbes and antibodies looked for", t)).ifPresent(all::add);
    boolean isOfMs = !said.alerts().isSilentOfMs();
    if (isOfMs) {
      all.add(probability());
      add(all, "What would tell most for its burden", telling(), DifferentialWords::of);
    }
    if (!diagrams.isEmpty()) {
      List<Paper.Block> blocks = new ArrayList<>();
      int beside = Math.min(ClinicianPaper.BESIDE, diagrams.size());
      diagrams.subList(0, beside).forEach(d -> blocks.add(ClinicianPaper.table(d)));
      blocks.addAll(ClinicianPaper.withTables(diagrams.subList(beside, diagrams.size())));
      all.add(new Section("Quotient diagrams with their numbers", blocks, Place.ANNEX));
    }
    said.weighed().criteria().stream()
        .filter(c -> isOfMs && said.workup().clinical().isEvidenceStated())
        .filter(c -> !c.checklist().isEmpty())
        .map(this::checklist)
        .forEach(all::add);
    add(all, "What is wrong with the input, each with its place", problems(), Function.identity());
    add(all, "Were every sample measured once more", repeat(), Function.identity());
    if (isOfMs) {
      add(
          all,
          "What speaks for and against each disease",
          result.arguments(),
          DifferentialWords::of);
    }
    if (isOfMs && result.probability().given().isPresent()) {
      add(all, "What the number assumes", result.assumptions(), Function.identity());
    }
    return all;
  }

  private Optional<Paper.Table> tests() {
    List<Paper.Row> rows =
        TestWords.of(said).stream()
            .map(t -> Paper.Row.of(t.name(), t.result(), t.detail().isEmpty() ? "–" : t.detail()))
            .toList();
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(new Paper.Table("", List.of("Test", "Result", "Titre, method"), rows));
  }

  private static <T> void add(
      List<Section> all, String heading, List<T> things, Function<T, String> sentence) {
    if (!things.isEmpty()) {
      all.add(Section.annex(heading, Items.of(things.stream().map(sentence).toList())));
    }
  }

  private Section probability() {
    List<Paper.Block> blocks = new ArrayList<>();
    blocks.add(Items.of(ProbabilityWords.of(result.probability())));
    WeightBars.toFigure("weights", result.weights())
        .ifPresent(bars -> blocks.add(new Paper.Picture(bars)));
    return new Section("Probability of a second attack or new lesions", blocks, Place.ANNEX);
  }

  private List<NextItem> telling() {
    List<NextItem> next = said.weighed().next();
    return next.subList(0, Math.min(MOST_NEXT, next.size()));
  }

  private List<String> repeat() {
    return said.statements().stream()
        .filter(Repeatability.class::isInstance)
        .map(Statement::text)
        .toList();
  }

  private List<String> problems() {
    return said.problems().stream().map(ClinicianAnnex::placed).toList();
  }

  private static String placed(Problem problem) {
    return problem.place().isEmpty()
        ? problem.text()
        : problem.text() + " (" + problem.place() + ")";
  }

  private Section checklist(CriteriaResult criteria) {
    return new Section(
        "Checklist of " + criteria.edition(),
        List.of(Items.of(criteria.checklist().stream().map(ClinicianAnnex::checked).toList())),
        Place.SCREEN);
  }

  private static String checked(Checked checked) {
    String evidence =
        checked.evidence().equals(checked.answer().word()) ? "" : " (" + checked.evidence() + ")";
    return checked.item().term() + ": " + checked.answer().word() + evidence;
  }
}
