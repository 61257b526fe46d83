package cistern.report.page;

import cistern.criteria.CriteriaResult;
import cistern.differential.Probability;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import cistern.finding.Problem;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Workup.Letter;
import cistern.puncture.procedure.After.SentTest;
import cistern.report.paper.Paper.Amount;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Judgement;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Result;
import cistern.report.paper.Paper.Results;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import cistern.report.wording.PrintedTime;
import cistern.report.wording.ProbabilityWords;
import cistern.report.wording.TestWords;
import cistern.statement.AtypicalForMs;
import cistern.statement.Conclusion;
import cistern.statement.NextStep;
import cistern.statement.Said;
import cistern.statement.Statement;
import cistern.statement.UrgentStatement;
import cistern.statement.WeakestLink;
import cistern.urgent.Tier;
import cistern.urgent.Urgency;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The letter to the doctor who asked: the clinician's own conclusion, question, answer, results,
 * meaning, and who does what by when.
 */
final class LetterPaper {

  /** More than this many doubts are counted, not told: the clinician's page has all. */
  private static final int TOLD = 3;

  private static final String CLINICIAN = "the clinician who signs this letter";
  private static final String CALL =
      "Call the treating doctor with what stands above; note who was told and when.";
  private static final String WHEN_REPORTED = "when the laboratory reports it";

  /** What only a specialist reads; it stands on the clinician's page. */
  private static final Set<FindingCode> LEFT_OUT =
      Set.of(
          FindingCode.IGG_LOCAL,
          FindingCode.IGA_LOCAL,
          FindingCode.IGM_LOCAL,
          FindingCode.KAPPA_LOCAL,
          FindingCode.KAPPA_QUOTIENT,
          FindingCode.KAPPA_FRACTION,
          FindingCode.LAMBDA_QUOTIENT,
          FindingCode.LAMBDA_INDEX,
          FindingCode.IGA_INDEX,
          FindingCode.IGM_INDEX,
          FindingCode.IGG_SYNTHESIS_RATE,
          FindingCode.IGG_CORRECTED,
          FindingCode.IGA_CORRECTED,
          FindingCode.IGM_CORRECTED,
          FindingCode.ALBUMIN_CORRECTED);

  private final Interpretation said;
  private final Facts facts;
  private final Letter letter;
  private final PrintedTime times;

  LetterPaper(Interpretation said, Facts facts) {
    this.said = said;
    this.facts = facts;
    this.letter = said.workup().remarks().letter();
    this.times = PrintedTime.of(facts).like(said.panel().panel().csf().at());
  }

  /** To whom it goes, and the clinician's own conclusion where one was typed. */
  List<Line> opening() {
    List<Line> lines = new ArrayList<>();
    said.statements().stream()
        .filter(Statement::isUrgent)
        .map(s -> Line.of(s.text()))
        .forEach(lines::add);
    letter
        .conclusion()
        .ifPresent(c -> lines.add(Line.of(c + letter.by().map(by -> " (" + by + ")").orElse(""))));
    letter.to().ifPresent(to -> lines.add(Line.of("To: " + to)));
    lines.add(Line.of(letter.salutation().orElse("Dear colleague,")));
    return lines;
  }

  List<Section> sections() {
    if (said.alerts().isSilencing()) {
      return List.of(
          Section.of("To think of", Items.of(ThoughtWords.of(said.alerts()))),
          Section.of("Results", new Results("Results against their limits", ofFluid(), List.of())),
          Section.of("What happens next", whileOpen()));
    }
    return List.of(
        Section.of("Question", Paragraphs.of(question())),
        new Section("Answer", List.of(new Paragraphs(answer()))),
        Section.of("Results", new Results("Results against their limits", results(), List.of())),
        new Section("Meaning", List.of(new Paragraphs(meaning()))),
        Section.of("What happens next", next()));
  }

  private String question() {
    return said.workup()
        .remarks()
        .question()
        .orElse(
            said.alerts().isInfant()
                ? "Do cells, protein and glucose of this fluid fit the age?"
                : "Is antibody made inside the central nervous system, as it often is in multiple"
                    + " sclerosis?");
  }

  /** What nobody may miss while something is urgent; the rest waits. */
  private List<Result> ofFluid() {
    List<Result> all =
        new ArrayList<>(
            new ResultRows(said, facts)
                .ofFluid().stream().map(LetterPaper::withoutInterval).toList());
    all.addAll(tests());
    return all;
  }

  /** The answer and its weakest link, a sentence each. */
  private List<Line> answer() {
    return List.of(
        Line.of(
            said.statements().stream()
                .filter(s -> s instanceof Conclusion || s instanceof WeakestLink)
                .map(Statement::text)
                .limit(2)
                .reduce("", (a, b) -> (a + " " + b).strip())));
  }

  private List<Result> results() {
    ResultRows rows = new ResultRows(said, facts);
    Set<String> hidden = Set.copyOf(LEFT_OUT.stream().map(FindingCode::term).toList());
    List<Result> all =
        new ArrayList<>(
            rows.plain().stream()
                .filter(r -> !hidden.contains(r.name()))
                .map(LetterPaper::withoutInterval)
                .toList());
    if (said.workup().clinical().isEvidenceStated() && !said.alerts().isInfant()) {
      said.weighed().criteria().stream().map(LetterPaper::criteria).forEach(all::add);
    }
    all.addAll(tests());
    waiting().stream().map(this::outstanding).forEach(all::add);
    List<String> notDone = rows.notDone();
    if (!notDone.isEmpty()) {
      all.add(worded("not measured", String.join(", ", notDone), "not done"));
    }
    return all;
  }

  /** A row for every test for a microbe or an antibody. */
  private List<Result> tests() {
    return TestWords.of(said).stream().map(t -> worded(t.name(), t.detail(), t.result())).toList();
  }

  private static Result withoutInterval(Result row) {
    return new Result(
        "",
        row.name(),
        new Amount(row.amount().value(), row.amount().unit(), ""),
        row.judgement(),
        row.note(),
        Optional.empty(),
        Grounds.MEASURED);
  }

  private static Result criteria(CriteriaResult result) {
    return worded("criteria of " + result.edition(), "", result.verdict().word().replace('-', ' '));
  }

  private Result outstanding(SentTest test) {
    String due = test.dueAt().map(t -> "due " + times.day(t)).orElse("");
    return worded(test.test().term(), due, TestWords.OUTSTANDING);
  }

  private static Result worded(String name, String limit, String word) {
    return new Result(
        "",
        name,
        new Amount("", "", ""),
        new Judgement(limit, Optional.empty(), word),
        "",
        Optional.empty(),
        Grounds.MEASURED);
  }

  private List<SentTest> waiting() {
    return said.workup().procedure().after().sent().stream()
        .filter(t -> t.receivedAt().isEmpty())
        .toList();
  }

  /** What the fluid means, what leads away from MS, and what is doubted. */
  private List<Line> meaning() {
    List<Line> lines = new ArrayList<>();
    lines.add(
        Line.of(
            said.alerts().isSilentOfMs()
                ? unsaid()
                : said(Conclusion.class::isInstance).map(this::meaning).orElse(OPEN)));
    said.statements().stream()
        .filter(s -> s instanceof UrgentStatement || s instanceof Said)
        .filter(s -> !s.isUrgent())
        .map(s -> Line.of(s.text()))
        .forEach(lines::add);
    said(AtypicalForMs.class::isInstance).map(s -> Line.of(s.text())).ifPresent(lines::add);
    boolean isReleased = letter.releaseProbability() == cistern.measurement.Answer.YES;
    if (isReleased && !said.alerts().isSilentOfMs()) {
      Probability probability = said.weighed().differential().probability();
      if (probability.given().isPresent()) {
        ProbabilityWords.of(probability).stream().map(Line::of).forEach(lines::add);
      }
    }
    doubts().stream().map(Line::of).forEach(lines::add);
    lines.add(
        Line.of(
            "Diagnosis and treatment are decided by the treating neurologist with history,"
                + " examination and imaging."));
    return lines;
  }

  private String unsaid() {
    return said.alerts().isInfant()
        ? "The limits of the first 90 days were used."
        : "What this means waits until what was found first is explained.";
  }

  private Optional<Statement> said(Predicate<Statement> kind) {
    return said.statements().stream().filter(kind).findFirst();
  }

  private static final String OPEN = "From this sample the question cannot be answered either way.";

  private String meaning(Statement answer) {
    return switch ((Conclusion) answer) {
      case Conclusion.SynthesisDemonstrated yes ->
          "The immune system is active inside the central nervous system. This fits multiple"
              + " sclerosis and is not proof of it: infection and other inflammation do the same.";
      case Conclusion.SynthesisSuggested perhaps ->
          "An immune reaction inside the central nervous system is likely enough to be followed up,"
              + " and not settled by these numbers alone.";
      case Conclusion.SynthesisEquivocal unclear ->
          "The result neither supports nor weakens the suspicion.";
      case Conclusion.SynthesisNotDemonstrated no
          when said.alerts().isStoppedBy("treated-before-sampling") ->
          "What was given before can hide antibody made inside the central nervous system: nothing"
              + " follows for or against multiple sclerosis.";
      case Conclusion.SynthesisNotDemonstrated no ->
          "Multiple sclerosis becomes less likely by this, and stays possible: some people who have"
              + " it never show antibody made inside the central nervous system.";
      case Conclusion.SynthesisUndetermined open -> OPEN;
    };
  }

  private List<String> doubts() {
    List<String> all =
        said.problems().stream()
            .filter(problem -> !problem.isOfWriting())
            .map(Problem::text)
            .distinct()
            .toList();
    List<String> told = new ArrayList<>(all.subList(0, Math.min(TOLD, all.size())));
    if (all.size() > TOLD) {
      told.add("More doubts, on the page for the clinician: %d.".formatted(all.size() - TOLD));
    }
    return told;
  }

  private Table next() {
    List<Row> rows = new ArrayList<>();
    asked(rows);
    for (Statement statement : said.statements()) {
      if (statement instanceof NextStep step) {
        rows.add(Row.of(step.text(), "the treating neurologist", byWhen(step)));
      }
    }
    chased(rows);
    rows.add(Row.of("Tell the person what was found.", CLINICIAN, "at the next visit"));
    return told(rows);
  }

  /** Who is called while something urgent is open. */
  private Table whileOpen() {
    List<Row> rows = new ArrayList<>();
    said.alerts().urgent().open().stream()
        .map(Urgency::tier)
        .min(Comparator.naturalOrder())
        .map(t -> Row.of(CALL, CLINICIAN, soon(t)))
        .ifPresent(rows::add);
    asked(rows);
    chased(rows);
    rows.add(
        Row.of("Ask the person to speak with a doctor; results follow then.", CLINICIAN, "today"));
    return told(rows);
  }

  /** What each urgent rule asks for that nobody has answered. */
  private void asked(List<Row> rows) {
    said.alerts().urgent().holding().stream()
        .filter(u -> u.answered().isEmpty() && !u.words().task().isEmpty())
        .map(
            u ->
                Row.of(
                    u.isOpen() ? u.words().task() : u.words().toText(),
                    "the treating neurologist",
                    soon(u.tier())))
        .forEach(rows::add);
  }

  private void chased(List<Row> rows) {
    List<String> waited =
        TestWords.of(said).stream().filter(TestWords::isOutstanding).map(TestWords::name).toList();
    if (!waited.isEmpty()) {
      String results = waited.size() == 1 ? "result" : "results";
      rows.add(
          Row.of(
              "Chase the %s: %s.".formatted(results, String.join(", ", waited)),
              CLINICIAN,
              WHEN_REPORTED));
    }
    waiting()
        .forEach(
            t ->
                rows.add(
                    Row.of(
                        "Chase the result: " + t.test().term() + ".",
                        CLINICIAN,
                        t.dueAt().map(times::day).orElse(WHEN_REPORTED))));
  }

  private static Table told(List<Row> rows) {
    return new Table("", List.of("What", "Who", "By when"), rows);
  }

  private static String soon(Tier tier) {
    return switch (tier) {
      case T0 -> "now, by telephone";
      case T1 -> "today";
      case T2 -> "before this is signed";
    };
  }

  private static String byWhen(NextStep step) {
    return switch (step) {
      case REDRAW_PAIR, DRAW_SERUM -> "with the next sample";
      case CHECK_VALUES, CONFIRM_GEL, COUNT_BLOOD, DILUTE_AND_REPEAT -> "before this is relied on";
      case FOCUS, REPEAT_FOCUSING, ADD_KAPPA, IMMUNOFIXATION -> "before the next visit";
    };
  }
}
