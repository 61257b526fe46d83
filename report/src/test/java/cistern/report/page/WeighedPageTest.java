package cistern.report.page;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.criteria.Evidence;
import cistern.criteria.Presentation;
import cistern.differential.Prior;
import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import cistern.report.WeighedCase;
import cistern.report.figure.Figure;
import cistern.report.figure.WeightBars;
import cistern.report.json.WeighedJsonText;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Criteria, differential, red flags and next steps on the clinician's page, in text and JSON. */
class WeighedPageTest {

  private static final Facts FACTS = Facts.standard();

  private static Interpretation of(int csfOnly, Optional<Prior> prior) {
    return of(csfOnly, prior, 60);
  }

  private static Interpretation of(int csfOnly, Optional<Prior> prior, double leukocytes) {
    InventedPuncture puncture =
        InventedPuncture.withLocalSynthesis()
            .with(Sample.csf(Analyte.LEUKOCYTES), Interval.of(leukocytes))
            .withBands(csfOnly, 0);
    return WeighedCase.of(puncture, WeighedCase.FIRST_ATTACK, prior);
  }

  private static Optional<Prior> prior() {
    return Optional.of(new Prior(0.3, 0.6, Answer.YES));
  }

  private static String text(Interpretation interpretation) {
    return Page.of("Cistern test", FACTS)
        .toPlainText(interpretation, Audience.CLINICIAN)
        .replaceAll("\\s+", " ");
  }

  @Test
  void text_priorStated_criteriaDifferentialFlagsAndNext() {
    assertThat(text(of(6, prior())))
        .contains("2017: met; dissemination in time: CSF-only bands in its place", "2024: met")
        .doesNotContain("17-5", "24-A", "McDonald2024draft", "counts: ")
        .contains("No probability: no cohort followed people with this finding. 60 leukocytes/µL")
        .contains("60 leukocytes/µL: more than the largest published series of MS has seen")
        .contains("To think of: infection")
        .contains("What would tell most for its burden")
        .doesNotContain("excludes");
  }

  /** Nine grams of protein in a litre: above a block quotients tell nothing of antibody. */
  @Test
  void text_spinalBlock_noVerdictOfAntibodyButOneOfProtein() {
    Interpretation blocked =
        WeighedCase.of(
            InventedPuncture.withLocalSynthesis()
                .with(Sample.csf(Analyte.ALBUMIN), Interval.of(5200))
                .with(Sample.csf(Analyte.IGG), Interval.of(1060))
                .with(Sample.csf(Analyte.TOTAL_PROTEIN), Interval.of(8800)),
            WeighedCase.FIRST_ATTACK,
            Optional.empty());

    assertThat(text(blocked))
        .containsPattern("intrathecal IgG fraction [^●○]*not usable")
        .doesNotContainPattern("intrathecal IgG fraction [0-9 %≤]*(above|within)")
        .doesNotContain("What disagrees")
        .containsPattern("total protein 8800 mg/L ≤ [0-9]+ above");
  }

  @Test
  void text_noPrior_noProbability() {
    assertThat(text(of(6, Optional.empty())))
        .contains("No probability: no probability before the puncture was stated.")
        .doesNotContain("95 % interval 6");
  }

  @Test
  void text_manyWays_threeToldAndTheRestCounted() {
    Interpretation open =
        WeighedCase.of(
            InventedPuncture.empty(),
            Evidence.UNKNOWN.withPresentation(Presentation.ATTACK),
            Optional.empty());

    assertThat(text(open)).containsPattern("or in [0-9]+ other ways");
  }

  @Test
  void page_clinician_holdsEveryBlockAndUnfoldsTheRest() {
    Parsed page =
        Parsed.of(Page.of("Cistern test", FACTS).toHtml(of(0, prior()), Audience.CLINICIAN));

    assertThat(page.texts("//h2"))
        .contains(
            "Criteria, each edition by itself", "Less usual in MS: to think of, not to conclude");
    assertThat(page.texts("//summary"))
        .contains(
            "Probability of a second attack or new lesions",
            "What would tell most for its burden",
            "Checklist of 2017",
            "Checklist of 2024",
            "What speaks for and against each disease");
  }

  /** Nothing unfolds on paper: what was assumed stands there in full, as in the text. */
  @Test
  void paperAndText_holdEveryAssumptionHabitAndDiseaseWithoutANumber() {
    Interpretation weighed = of(6, prior());
    String paper =
        Parsed.of(Page.of("Cistern test", FACTS).toPaper(weighed, Audience.CLINICIAN, ""))
            .text()
            .replaceAll("\\s+", " ");

    for (String document : List.of(paper, text(weighed))) {
      assertThat(weighed.weighed().differential().assumptions()).allMatch(document::contains);
    }
  }

  @Test
  void letter_evidenceStated_criteriaFlagsAndEstimate() {
    assertThat(
            Parsed.of(Page.of("Cistern test", FACTS).toHtml(of(6, prior()), Audience.REFERRER))
                .text())
        .contains("criteria of 2017")
        .contains("60 leukocytes/µL")
        .doesNotContain("an estimate, not a diagnosis", "17-5");
    assertThat(
            Parsed.of(
                    Page.of("Cistern test", FACTS)
                        .toHtml(of(6, Optional.empty()), Audience.REFERRER))
                .text())
        .doesNotContain("an estimate, not a diagnosis");
  }

  /** To the person: that there is a list, and whether it is open; no verdict, number or disease. */
  @Test
  void patientPage_evidenceStated_onlyThatThereIsAListAndIfItIsOpen() {
    Page pages = Page.of("Cistern test", FACTS);
    Interpretation open =
        WeighedCase.of(
            InventedPuncture.empty(),
            Evidence.UNKNOWN.withPresentation(Presentation.ATTACK),
            Optional.empty());

    assertThat(Parsed.of(pages.toHtml(of(6, prior()), Audience.PATIENT)).texts("//main").getFirst())
        .contains("Doctors go through a list of rules")
        .doesNotContain("not known yet")
        .doesNotContain("%", "criteria", "2017", "sarcoid", "likely");
    assertThat(Parsed.of(pages.toHtml(open, Audience.PATIENT)).texts("//main").getFirst())
        .contains("Some things on that list are not known yet");
    assertThat(
            Parsed.of(
                    pages.toHtml(
                        InventedPuncture.withLocalSynthesis().interpretation(), Audience.PATIENT))
                .texts("//main")
                .getFirst())
        .doesNotContain("list of rules");
  }

  @Test
  void figure_weights_titleSaysTheStrongestAndTableHasAll() {
    Figure figure =
        WeightBars.toFigure("weights", of(6, prior(), 9).weighed().differential().weights())
            .orElseThrow();

    assertThat(figure.title()).contains("CSF-only bands", "nothing else is counted");
    assertThat(figure.description()).startsWith("Not counted: raised κ index");
    assertThat(figure.table().rows().getFirst()).contains("CSF-only bands");
    assertThat(figure.table().rows().getLast().getLast()).contains("not counted");
    assertThat(figure.toSvg().toString()).isNotEmpty();
    assertThat(WeightBars.toFigure("none", List.of())).isEmpty();
  }

  @Test
  void json_interpretation_holdsThePromisedFields() {
    String json = WeighedJsonText.of(of(6, prior()));

    assertThat(json)
        .contains("\"edition\":\"2017\",\"ruleSet\":\"McDonald2017\",\"verdict\":\"met\"")
        .contains("\"rows\":[\"17-5\"],\"ditBasis\":\"ocb_substitute\",\"status\":\"second-hand\"")
        .contains("\"missing\":[],\"missingAgainst\":[]")
        .contains("\"rows\":[\"24-A\",\"24-B\"],\"ditBasis\":null")
        .contains("\"prior\":{\"ms\":[0.3,0.6],\"usesMri\":\"yes\"")
        .contains("{\"code\":\"ms\",\"for\":[")
        .doesNotContain("posterior", "logOdds", "informationBits")
        .contains("\"probability\":{\"status\":\"outside-domain\"")
        .contains("\"code\":\"leukocytes-beyond-ms\",\"finding\":\"leukocytes\",\"suggests\":[")
        .contains("\"burden\":\"same-sample\"")
        .contains("\"puncture\":{\"2017\":\"narrows\",\"2024\":\"narrows\"}");
  }

  @Test
  void json_withinTheDomain_numberWithItsContextAndOneWeight() {
    assertThat(WeighedJsonText.of(of(6, prior(), 9)))
        .contains("\"probability\":{\"status\":\"given\",\"context\":\"attack-mri-used-dis\"")
        .contains("\"prior\":[0.3,0.6],\"point\":0.")
        .containsOnlyOnce("\"logOdds\":");
  }

  @Test
  void json_noPrior_noPosterior() {
    assertThat(WeighedJsonText.of(of(6, Optional.empty())))
        .doesNotContain("\"posterior\":", "\"logOdds\":", "\"informationBits\":")
        .contains("\"point\":null,\"interval95\":null");
  }
}
