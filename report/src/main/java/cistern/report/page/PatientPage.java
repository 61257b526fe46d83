package cistern.report.page;

import cistern.criteria.CriteriaResult;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.interpretation.Interpretation;
import cistern.measurement.Compartment;
import cistern.panel.Panel;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.statement.Conclusion;
import cistern.statement.NextStep;
import java.util.ArrayList;
import java.util.List;

/**
 * The same for the person, at about the reading age of twelve: what was tested, what was found,
 * what it does and doesn't mean, whom to ask. No chance, no number, no other disease. A draft until
 * a clinician has signed it.
 */
final class PatientPage {

  private PatientPage() {}

  static Element of(Sheet sheet) {
    Interpretation interpretation = sheet.interpretation();
    return Element.of("main")
        .with("class", "patient")
        .with(
            List.<Node>of(
                EvidenceBlocks.banner(interpretation),
                Html.paragraph("Draft. A doctor must check and sign this page before you use it.")
                    .with("class", "draft"),
                Element.of("h1", "Your spinal fluid test"),
                part("tested", "What was tested", tested(interpretation)),
                part("found", "What was found", found(interpretation)),
                part("means", "What this can mean", means(interpretation)),
                part("not-told", "What it does not tell us", notTold(interpretation)),
                part("ask", "Whom to ask", ask(interpretation)),
                Html.paragraph("Checked and signed by:                    Date:")
                    .with("class", "signature"),
                EvidenceBlocks.shortVersions(sheet)));
  }

  private static Element part(String id, String heading, List<String> sentences) {
    return Html.section(id, heading).with(sentences.stream().map(Html::paragraph).toList());
  }

  private static List<String> tested(Interpretation interpretation) {
    List<String> said = new ArrayList<>();
    Panel panel = interpretation.panel().panel();
    said.add("We took a little of the clear fluid that flows around your brain and spine.");
    if (panel.results().keySet().stream().anyMatch(s -> s.in() == Compartment.SERUM)) {
      said.add("We took some of your blood too, so that we can compare the two.");
    }
    said.add(
        "We looked for signs that your immune system, the part of you that fights germs, is busy in"
            + " the brain or spine.");
    if (interpretation.bands().isReported()) {
      said.add(
          "We also looked for bands. Bands are groups of proteins that the immune system makes.");
    }
    return said;
  }

  private static List<String> found(Interpretation interpretation) {
    List<String> said = new ArrayList<>();
    said.add(
        switch (answer(interpretation)) {
          case Conclusion.SynthesisDemonstrated yes ->
              "We found signs that your immune system is busy in the brain or spine.";
          case Conclusion.SynthesisSuggested perhaps ->
              "Some results hint that your immune system is busy in the brain or spine. Others do"
                  + " not show it.";
          case Conclusion.SynthesisEquivocal unclear ->
              "The result lies right on the border. We can’t say yes or no.";
          case Conclusion.SynthesisNotDemonstrated no ->
              "We did not find signs that your immune system is busy in the brain or spine.";
          case Conclusion.SynthesisUndetermined open -> "This test did not give a clear answer.";
        });
    if (interpretation.findings().get(FindingCode.ALBUMIN_QUOTIENT).isAbove()) {
      said.add("More protein than usual has passed from your blood into the fluid.");
    }
    if (interpretation.findings().verdict(FindingCode.LEUKOCYTES) == Verdict.ABOVE) {
      said.add("There were more white blood cells in the fluid than usual.");
    }
    if (!interpretation.problems().isEmpty()) {
      said.add("Some of the results need a second look. Your doctor knows which ones.");
    }
    return said;
  }

  private static List<String> means(Interpretation interpretation) {
    return switch (answer(interpretation)) {
      case Conclusion.SynthesisDemonstrated yes ->
          List.of(
              "This is often seen in people with multiple sclerosis (MS).",
              "It can have other causes too. Your doctor will look at all of them with you.");
      case Conclusion.SynthesisSuggested perhaps ->
          List.of("This can have many causes. Your doctor may want one more test to be sure.");
      case Conclusion.SynthesisEquivocal unclear ->
          List.of("A result like this can go either way. Your doctor may want to test again.");
      case Conclusion.SynthesisNotDemonstrated no ->
          List.of(
              "This is a good sign, but it is not the whole story.",
              "Some people with multiple sclerosis (MS) have a result like this too.");
      case Conclusion.SynthesisUndetermined open ->
          List.of(
              "It does not mean that something is wrong with you.",
              "Tests can fail to give an answer. Your doctor may want to test again.");
    };
  }

  private static List<String> notTold(Interpretation interpretation) {
    List<String> said = new ArrayList<>();
    said.add("This test alone does not tell us whether you have MS.");
    said.add("It does not tell us how you will feel in the months or years to come.");
    if (interpretation.workup().clinical().isEvidenceStated()) {
      said.add("Doctors go through a list of rules before they say that it is MS.");
      if (interpretation.weighed().criteria().stream().anyMatch(PatientPage::isOpen)) {
        said.add(
            "Some things on that list are not known yet. Your doctor can tell you which ones.");
      }
    }
    said.add(
        "Your doctor puts it together with what you said, how you are when you are checked, and the"
            + " pictures from the scan.");
    return said;
  }

  private static boolean isOpen(CriteriaResult result) {
    return !result.missing().isEmpty();
  }

  private static List<String> ask(Interpretation interpretation) {
    List<String> said = new ArrayList<>();
    said.add("Please ask the doctor or the nurse who looks after you.");
    said.add("It helps to write down what you want to ask, and to take someone with you.");
    if (interpretation.statements().stream().anyMatch(NextStep.class::isInstance)) {
      said.add("Ask which test comes next, and why.");
    }
    said.add("If you feel much worse all of a sudden, call for help at once.");
    return said;
  }

  private static Conclusion answer(Interpretation interpretation) {
    return interpretation.statements().stream()
        .filter(Conclusion.class::isInstance)
        .map(Conclusion.class::cast)
        .findFirst()
        .orElseGet(() -> new Conclusion.SynthesisUndetermined(""));
  }
}
