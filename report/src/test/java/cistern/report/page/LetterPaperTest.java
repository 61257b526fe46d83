package cistern.report.page;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import cistern.report.look.ReportFacts;
import cistern.report.patient.PatientResultTest;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LetterPaperTest {

  private static final InventedPuncture PANEL_2 = InventedPuncture.withLocalSynthesis();

  static Stream<InventedPuncture> punctures() {
    return PatientResultTest.punctures();
  }

  private static Parsed letter(InventedPuncture puncture) {
    return Parsed.of(
        Page.of("Cistern", Facts.standard())
            .toPaper(puncture.interpretation(), Audience.REFERRER, ""));
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void letter_anyResult_hasItsFiveParts(InventedPuncture puncture) {
    assertThat(letter(puncture).texts("//h2"))
        .containsExactly("Question", "Answer", "Results", "Meaning", "What happens next");
  }

  @Test
  void letterhead_ofAPolicy_standsAboveEveryPaperLineByLine() {
    FactValue head = new FactValue.Word("Invented Clinic\nRoad 1");
    Policy policy = new Policy("house", Map.of("page.letterhead", new Policy.Change(head, "us")));
    Facts facts = ReportFacts.of(Facts.standard()).with(policy);
    for (Audience audience : List.of(Audience.CLINICIAN, Audience.REFERRER, Audience.PATIENT)) {
      assertThat(Page.of("Cistern", facts).toPlainText(PANEL_2.interpretation(), audience))
          .startsWith("Invented Clinic\nRoad 1\n");
      assertThat(
              Parsed.of(Page.of("Cistern", facts).toPaper(PANEL_2.interpretation(), audience, ""))
                  .texts("//p[@class='letterhead']/strong"))
          .containsExactly("Invented Clinic", "Road 1");
    }
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void letter_anyResult_leavesDiagnosisToTheClinician(InventedPuncture puncture) {
    assertThat(letter(puncture).text())
        .contains("decided by the treating neurologist")
        .doesNotContain("excludes", "confirms", "diagnostic of", "absent");
  }

  @Test
  void results_notDone_isARow() {
    assertThat(letter(PANEL_2).texts("//tr[th='not measured']").getFirst())
        .contains("not done", "oligoclonal bands", "lactate");
  }

  @Test
  void letter_asTyped_beginsWithTheConclusionAndTheAddressee() {
    Workup typed = PANEL_2.withBands(6, 0).interpretation().workup();
    Workup.Letter letter =
        new Workup.Letter(
            Optional.of("Dr Example, Sometown"),
            Optional.of("Dear Dr Example,"),
            Optional.of("I think that this is a first attack of MS."),
            Optional.of("A. Neurologist"),
            cistern.measurement.Answer.NO);
    Workup whole =
        new Workup(
            typed.id(),
            new Workup.Remarks(false, Optional.empty(), letter, Optional.empty()),
            typed.panel(),
            typed.bands(),
            typed.clinical(),
            typed.procedure(),
            List.of());
    Parsed page =
        Parsed.of(
            Page.of("Cistern", Facts.standard())
                .toPaper(Interpreter.of(Facts.standard()).interpret(whole), Audience.REFERRER, ""));

    assertThat(page.texts("//main/p[@class='answer']"))
        .containsExactly("I think that this is a first attack of MS. (A. Neurologist)");
    assertThat(page.texts("//main/p[@class='statement']"))
        .containsExactly("To: Dr Example, Sometown", "Dear Dr Example,");
  }

  @Test
  void meaning_manyProblems_areCounted() {
    InventedPuncture many =
        PANEL_2
            .with(Analyte.ALBUMIN, 42_000, 220)
            .with(Analyte.IGG, 11_000, 62)
            .with(Analyte.IGA, 3_000, 2)
            .with(Analyte.IGM, 2_000, 1)
            .with(Analyte.GLUCOSE, 300, 5);

    assertThat(letter(many).texts("//section/p"))
        .anyMatch(p -> p.equals("More doubts, on the page for the clinician: 1."));
  }
}
