package cistern.report.patient;

import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.measurement.Compartment;
import cistern.puncture.procedure.After.SentTest;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Field;
import cistern.report.paper.Paper.Form;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Seal;
import cistern.report.paper.Paper.Section;
import cistern.statement.Conclusion;
import cistern.statement.Statement;
import cistern.urgent.Tier;
import cistern.urgent.Urgency;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What was found, for the person, at about the reading age of twelve: what was tested, what was
 * found, what it does and doesn't mean, what happens next, when to call and whom to ask. No chance,
 * no number, no other disease. While something must be acted on first, it only asks to speak to the
 * doctor today.
 */
public final class PatientResult {

  private final PatientWords words;
  private final Interpretation said;
  private final Optional<String> signed;
  private final String software;

  private PatientResult(
      PatientWords words, Interpretation said, Optional<String> signed, String software) {
    this.words = words;
    this.said = said;
    this.signed = signed;
    this.software = software;
  }

  /**
   * The paper.
   *
   * @param words in the language of the person
   * @param signed who signed it, when somebody has
   * @param software the name and version of the program
   */
  public static Paper of(
      PatientWords words, Interpretation said, Optional<String> signed, String software) {
    return new PatientResult(words, said, signed, software).paper();
  }

  private Paper paper() {
    boolean isSilent = said.alerts().isSilencing();
    String when = when(afterwards());
    String invented = said.cautions().contains(Caution.INVENTED) ? " " + words.of("invented") : "";
    Seal seal =
        signed.<Seal>map(Seal.Signed::new).orElseGet(() -> new Seal.Unsigned(words.of("draft")));
    return new Paper(
        new Paper.Front(
            Paper.Kind.PATIENT,
            words.of(isSilent ? when + ".title" : "result.title"),
            "",
            words.of("banner") + invented,
            words.locale(),
            seal),
        List.of(),
        isSilent ? waiting(when) : result(),
        words.of("made", software, said.workup().id()));
  }

  /** What was told after the puncture and nobody has answered. */
  private List<Urgency> afterwards() {
    return said.alerts().urgent().unansweredAfterwards();
  }

  /** The key of what is said first: what cannot wait for a call, or can until the day's end. */
  static String when(List<Urgency> afterwards) {
    return afterwards.stream().anyMatch(u -> u.tier() == Tier.T0) ? "now" : "today";
  }

  private List<Section> waiting(String when) {
    return List.of(new Section("", List.of(new Paragraphs(words.list(when)))), call());
  }

  private List<Section> result() {
    boolean isUnwell = !afterwards().isEmpty();
    List<Section> all = new ArrayList<>();
    if (isUnwell) {
      all.add(new Section("", List.of(new Paragraphs(List.of(line("today.unwell"))))));
      all.add(call());
    }
    all.add(part("result.tested", tested(), new Picture(PatientDrawing.needle(words))));
    all.add(found());
    all.add(part("result.means", words.list("result.means." + meaning())));
    all.add(part("result.not-told", notTold()));
    all.add(part("result.next", next()));
    if (!isUnwell) {
      all.add(call());
    }
    all.add(part("result.ask", words.list("result.ask")));
    return all;
  }

  private Section part(String key, List<Line> lines, Block... more) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Paragraphs(lines));
    blocks.addAll(List.of(more));
    return new Section(words.of(key), blocks);
  }

  private Line line(String key) {
    return Line.of(words.of(key));
  }

  private List<Line> tested() {
    List<Line> lines = new ArrayList<>();
    lines.add(line("result.tested.fluid"));
    if (said.panel().panel().results().keySet().stream()
        .anyMatch(s -> s.in() == Compartment.SERUM)) {
      lines.add(line("result.tested.blood"));
    }
    lines.add(line("result.tested.immune"));
    if (said.bands().isReported()) {
      lines.add(line("result.tested.bands"));
    }
    return lines;
  }

  private Section found() {
    List<Line> lines = new ArrayList<>();
    lines.add(line("result.found." + kind()));
    if (said.findings().get(FindingCode.ALBUMIN_QUOTIENT).isAbove()) {
      lines.add(line("result.found.barrier"));
    }
    if (said.findings().verdict(FindingCode.LEUKOCYTES) == Verdict.ABOVE) {
      lines.add(line("result.found.cells"));
    }
    if (said.problems().stream().anyMatch(problem -> !problem.isOfWriting())) {
      lines.add(line("result.found.problems"));
    }
    return said.bands().isReported()
        ? part("result.found", lines, new Picture(PatientDrawing.bands(words)))
        : part("result.found", lines);
  }

  private List<Line> notTold() {
    List<Line> lines = new ArrayList<>(words.list("result.not-told"));
    if (said.workup().clinical().isEvidenceStated()) {
      lines.add(line("result.rules"));
      if (said.weighed().criteria().stream().anyMatch(r -> !r.missing().isEmpty())) {
        lines.add(line("result.rules.open"));
      }
    }
    return lines;
  }

  private List<Line> next() {
    List<Line> lines = new ArrayList<>(words.list("result.next"));
    long waiting =
        said.workup().procedure().after().sent().stream().filter(PatientResult::isWaiting).count();
    if (waiting > 0) {
      lines.add(Line.of(words.of("result.waiting", waiting)));
    }
    return lines;
  }

  private static boolean isWaiting(SentTest test) {
    return test.receivedAt().isEmpty();
  }

  private Section call() {
    return call(words, said.workup().procedure().after().contact().orElse(""));
  }

  /** When to call at once, and whom. */
  static Section call(PatientWords words, String contact) {
    return Section.of(
        words.of("call"),
        new Items("", words.list("call")),
        new Form(words.of("call.form"), List.of(new Field(words.of("call.number"), contact))));
  }

  /** Where nothing may be said of MS, that the result can have many causes. */
  private String meaning() {
    return said.alerts().isSilentOfMs() ? "suggested" : kind();
  }

  private String kind() {
    Optional<Statement> answer =
        said.statements().stream().filter(Conclusion.class::isInstance).findFirst();
    return answer
        .map(
            a ->
                switch ((Conclusion) a) {
                  case Conclusion.SynthesisDemonstrated yes -> "demonstrated";
                  case Conclusion.SynthesisSuggested perhaps -> "suggested";
                  case Conclusion.SynthesisEquivocal unclear -> "equivocal";
                  case Conclusion.SynthesisNotDemonstrated no -> "not-demonstrated";
                  case Conclusion.SynthesisUndetermined open -> "undetermined";
                })
        .orElse("undetermined");
  }
}
