package cistern.report.page;

import cistern.bands.BandReading;
import cistern.differential.Disease;
import cistern.finding.Problem;
import cistern.interpretation.Interpretation;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.wording.DifferentialWords;
import cistern.statement.AtypicalForMs;
import cistern.statement.Conclusion;
import cistern.statement.CriteriaStatement;
import cistern.statement.NextStep;
import cistern.statement.Statement;
import cistern.statement.WeakestLink;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Half a page for the doctor who asked: question, answer, meaning, outstanding, plan. */
final class ReferrerLetter {

  /** More than this many outstanding things are counted, not told: the clinician's page has all. */
  private static final int TOLD = 4;

  private ReferrerLetter() {}

  static Element of(Sheet sheet) {
    Interpretation interpretation = sheet.interpretation();
    List<Statement> statements = interpretation.statements();
    return Element.of("main")
        .with("class", "letter")
        .with(
            List.<Node>of(
                EvidenceBlocks.banner(interpretation),
                AnswerBlock.head(interpretation),
                Html.paragraph("Dear colleague,"),
                part("Question", Html.paragraph(question(interpretation))),
                part("Answer", answer(statements)),
                part("Meaning", meaning(interpretation)),
                part("Outstanding", outstanding(interpretation)),
                part("Plan", plan(statements)),
                Html.paragraph("With kind regards").with("class", "regards"),
                Html.paragraph("Reviewed and signed by:                    Date:")
                    .with("class", "signature"),
                EvidenceBlocks.versions(sheet)));
  }

  private static String question(Interpretation interpretation) {
    return interpretation
        .workup()
        .remarks()
        .question()
        .orElse(
            "Is antibody made inside the central nervous system, as it often is in multiple"
                + " sclerosis?");
  }

  private static Node part(String name, Node content) {
    return Html.division("part", Element.of("h2", name), Html.division("content", content));
  }

  private static Optional<Conclusion> answerOf(List<Statement> statements) {
    return statements.stream()
        .filter(Conclusion.class::isInstance)
        .map(Conclusion.class::cast)
        .findFirst();
  }

  private static Node answer(List<Statement> statements) {
    List<Node> sentences = new ArrayList<>();
    answerOf(statements)
        .ifPresent(a -> sentences.add(Html.paragraph(a.text()).with("class", "said")));
    statements.stream()
        .filter(WeakestLink.class::isInstance)
        .forEach(w -> sentences.add(Html.paragraph(w.text())));
    return new Fragment(sentences);
  }

  /** What the fluid means; then each edition of the criteria, and what leads away from MS. */
  private static Node meaning(Interpretation interpretation) {
    List<Statement> statements = interpretation.statements();
    List<Node> sentences = new ArrayList<>();
    sentences.add(Html.paragraph(meaning(answerOf(statements))));
    statements.stream()
        .filter(s -> s instanceof CriteriaStatement || s instanceof AtypicalForMs)
        .forEach(s -> sentences.add(Html.paragraph(s.text())));
    interpretation
        .weighed()
        .differential()
        .posterior(Disease.MS)
        .ifPresent(p -> sentences.add(Html.paragraph(DifferentialWords.toSentence(p))));
    return new Fragment(sentences);
  }

  private static String meaning(Optional<Conclusion> answer) {
    return answer
        .map(
            a ->
                switch (a) {
                  case Conclusion.SynthesisDemonstrated yes ->
                      "The immune system is active inside the central nervous system. This fits"
                          + " multiple sclerosis and is not proof of it: infection and other"
                          + " inflammation do the same.";
                  case Conclusion.SynthesisSuggested perhaps ->
                      "An immune reaction inside the central nervous system is likely enough to be"
                          + " followed up, and not settled by these numbers alone.";
                  case Conclusion.SynthesisEquivocal unclear ->
                      "The result neither supports nor weakens the suspicion.";
                  case Conclusion.SynthesisNotDemonstrated no ->
                      "Multiple sclerosis becomes less likely by this, and stays possible: some"
                          + " people who have it never show antibody made inside the central"
                          + " nervous system.";
                  case Conclusion.SynthesisUndetermined open ->
                      "From this sample the question cannot be answered either way.";
                })
        .orElse("From this sample the question cannot be answered either way.");
  }

  private static Node outstanding(Interpretation interpretation) {
    List<String> open = new ArrayList<>();
    BandReading bands = interpretation.bands();
    if (!bands.isReported()) {
      open.add("Oligoclonal bands have not been reported.");
    } else if (!bands.isConfirmed()) {
      open.add("The automatic reading of the gel awaits a person’s confirmation.");
    }
    interpretation.problems().stream().map(Problem::text).distinct().forEach(open::add);
    if (open.isEmpty()) {
      return Html.paragraph("Nothing in the laboratory’s part of this work-up.");
    }
    int more = open.size() - TOLD;
    List<String> told = new ArrayList<>(open.subList(0, Math.min(TOLD, open.size())));
    if (more > 0) {
      told.add("%d more on the page for the clinician.".formatted(more));
    }
    return Html.list(told, Text::new);
  }

  private static Node plan(List<Statement> statements) {
    List<String> steps =
        new ArrayList<>(
            statements.stream().filter(NextStep.class::isInstance).map(Statement::text).toList());
    if (steps.isEmpty()) {
      steps.add("No further test of this sample is suggested.");
    }
    steps.add(
        "Diagnosis and treatment are decided by the treating neurologist with history, examination"
            + " and imaging.");
    return Html.list(steps, Text::new);
  }
}
