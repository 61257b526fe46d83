package cistern.weighing;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandReport;
import cistern.criteria.Count;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.differential.Prior;
import cistern.differential.Probability;
import cistern.differential.Serology;
import cistern.interpretation.Interpreted;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.PanelText;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DomainTest {

  private static final String PAIR = "albumin.csf=220 albumin.serum=42000";
  private static final BandReport BANDS = Interpreted.bands(6, 0, 0);

  /** A first attack with lesions in two of the four regions of 2017. */
  private static final Map<Item, Answer> DISSEMINATED =
      Map.of(Item.PERIVENTRICULAR, Answer.YES, Item.INFRATENTORIAL, Answer.YES);

  private static final Map<Item, Answer> ONE_REGION =
      Map.of(
          Item.PERIVENTRICULAR, Answer.YES,
          Item.INFRATENTORIAL, Answer.NO,
          Item.CORTICAL_JUXTACORTICAL, Answer.NO,
          Item.SPINAL_CORD, Answer.NO);

  private static Prior prior(double low, double high) {
    return new Prior(low, high, Answer.NO);
  }

  private static Evidence attack(Map<Item, Answer> answers) {
    return new Evidence(Presentation.ATTACK, Count.of(1), Count.of(1), answers);
  }

  private static Probability of(
      Panel panel,
      BandReport bands,
      Evidence evidence,
      @Nullable Prior prior,
      Serology... serology) {
    ClinicalPicture clinical =
        new ClinicalPicture(evidence, Optional.ofNullable(prior), List.of(serology));
    return Interpreter.of(Interpreted.FACTS)
        .interpret(new Workup("test", panel, bands, List.of()).withClinical(clinical))
        .weighed()
        .differential()
        .probability();
  }

  private static Probability of(Prior prior) {
    return of(PanelText.parse(34, PAIR), BANDS, attack(Map.of()), prior);
  }

  private static Serology serology(String test, Serology.Result result) {
    return new Serology(test, Compartment.CSF, result);
  }

  @Test
  void probability_typicalAttack_givenWithItsContextAndWhatIsUnknown() {
    Probability given = of(prior(0.5, 0.5));

    assertThat(given.status()).isEqualTo(Probability.Status.GIVEN);
    assertThat(given.context().orElseThrow().code()).isEqualTo("attack-mri-not-used");
    assertThat(given.unknown()).contains("MOG antibodies", "lactate", "a better explanation");
  }

  @Test
  void probability_drawTimesMissing_givenAndNamed() {
    Panel untimed = PanelText.parse(34, PAIR).withDraws(Draw.UNKNOWN, Draw.UNKNOWN);

    assertThat(of(untimed, BANDS, attack(Map.of()), prior(0.5, 0.5)).unknown())
        .contains("the time between the draws");
  }

  @ParameterizedTest
  @CsvSource({
    "0.04, 0.2, beyond",
    "0.7, 0.96, beyond",
    "0.2, 0.51, wider",
    "0.05, 0.35, ",
    "0.65, 0.95, "
  })
  void probability_priorAtTheEdges(double low, double high, String reason) {
    Probability got = of(prior(low, high));

    assertThat(got.given().isPresent()).isEqualTo(reason == null);
    assertThat(got.reason().orElse("")).contains(reason == null ? "" : reason);
  }

  @ParameterizedTest
  @EnumSource(value = Presentation.class, names = "ATTACK", mode = EnumSource.Mode.EXCLUDE)
  void probability_anotherPresentation_noneAndWhy(Presentation presentation) {
    Evidence evidence = attack(Map.of()).withPresentation(presentation);
    Probability got = of(PanelText.parse(34, PAIR), BANDS, evidence, prior(0.3, 0.5));

    assertThat(got.status()).isEqualTo(Probability.Status.OUTSIDE_DOMAIN);
    assertThat(got.given()).isEmpty();
    assertThat(got.reason().orElseThrow()).isNotBlank();
  }

  @ParameterizedTest
  @CsvSource({"17.9, false", "18, true"})
  void probability_age_adultsOnly(double age, boolean isGiven) {
    Probability got = of(PanelText.parse(age, PAIR), BANDS, attack(Map.of()), prior(0.4, 0.6));

    assertThat(got.given().isPresent()).isEqualTo(isGiven);
  }

  @ParameterizedTest
  @CsvSource({
    "leukocytes.csf=40, true",
    "leukocytes.csf=41, false",
    "total-protein.csf=1000, true",
    "total-protein.csf=1001, false",
    "lactate.csf=2.7, true",
    "lactate.csf=2.8, false"
  })
  void probability_fluidNoCohortHolds_none(String result, boolean isGiven) {
    Probability got =
        of(PanelText.parse(34, PAIR + " " + result), BANDS, attack(Map.of()), prior(0.4, 0.6));

    assertThat(got.given().isPresent()).isEqualTo(isGiven);
  }

  @ParameterizedTest
  @CsvSource({
    "mog-igg, POSITIVE, false",
    "mog-igg, BORDERLINE, false",
    "mog-igg, NEGATIVE, true",
    "nmdar-igg, POSITIVE, false",
    "anti-NMDA-receptor, POSITIVE, false",
    "Hu, POSITIVE, false",
    "human-herpes-6, POSITIVE, true"
  })
  void probability_definingAntibody_none(String test, Serology.Result result, boolean isGiven) {
    Probability got =
        of(
            PanelText.parse(34, PAIR),
            BANDS,
            attack(Map.of()),
            prior(0.4, 0.6),
            serology(test, result));

    assertThat(got.given().isPresent()).isEqualTo(isGiven);
  }

  @Test
  void probability_imagingCounted_byDisseminationInSpace() {
    Prior used = new Prior(0.6, 0.8, Answer.YES);
    Panel panel = PanelText.parse(34, PAIR);
    Probability shown = of(panel, BANDS, attack(DISSEMINATED), used);
    Probability not = of(panel, BANDS, attack(ONE_REGION), used);
    Probability open = of(panel, BANDS, attack(Map.of()), used);

    assertThat(shown.context().orElseThrow().code()).isEqualTo("attack-mri-used-dis");
    assertThat(shown.given()).isPresent();
    assertThat(not.status()).isEqualTo(Probability.Status.NOT_CALIBRATED);
    assertThat(not.context().orElseThrow().code()).isEqualTo("attack-mri-used-no-dis");
    assertThat(open.reason().orElseThrow()).contains("dissemination in space");
    assertThat(of(panel, BANDS, attack(DISSEMINATED), new Prior(0.6, 0.8, Answer.UNKNOWN)).reason())
        .get()
        .asString()
        .contains("imaging");
  }

  @Test
  void probability_bandsNotUsable_none() {
    Panel panel = PanelText.parse(34, PAIR);
    Panel late = panel.withDraws(Draw.at(PanelText.DRAWN), Draw.at(PanelText.DRAWN.plusHours(25)));

    assertThat(of(panel, Interpreted.bands(1, 0, 0), attack(Map.of()), prior(0.4, 0.6)).reason())
        .contains("the bands are not decided");
    assertThat(of(panel, Interpreted.bands(0, 3, 0), attack(Map.of()), prior(0.4, 0.6)).given())
        .isEmpty();
    assertThat(of(late, BANDS, attack(Map.of()), prior(0.4, 0.6)).reason())
        .contains("CSF and serum were drawn too far apart");
    assertThat(of(panel, new BandReport.NotReported(), attack(Map.of()), prior(0.4, 0.6)).given())
        .isEmpty();
    assertThat(of(panel, BANDS, attack(Map.of()), null).reason().orElseThrow())
        .contains("no probability before the puncture");
  }

  @Test
  void probability_kappaWithoutAnyBandReport_standsForBands() {
    Panel kappa = PanelText.parse(34, PAIR + " kappa-flc.csf=5 kappa-flc.serum=15");
    Probability got = of(kappa, new BandReport.NotReported(), attack(Map.of()), prior(0.4, 0.6));

    assertThat(got.given().orElseThrow().marker().finding()).isEqualTo("kappa-index");
  }

  @Test
  void probability_betterExplanationOrCriteriaMetAlready_none() {
    Panel panel = PanelText.parse(34, PAIR);
    Map<Item, Answer> better = new EnumMap<>(Item.class);
    better.put(Item.NO_BETTER_EXPLANATION, Answer.NO);
    Evidence met =
        new Evidence(
            Presentation.ATTACK,
            Count.of(2),
            Count.of(2),
            Map.of(
                Item.NO_BETTER_EXPLANATION, Answer.YES,
                Item.PERIVENTRICULAR, Answer.YES,
                Item.INFRATENTORIAL, Answer.YES));

    assertThat(of(panel, BANDS, attack(better), prior(0.4, 0.6)).reason())
        .contains("a better explanation is named");
    assertThat(of(panel, BANDS, met, new Prior(0.5, 0.7, Answer.YES)).reason().orElseThrow())
        .contains("met without the fluid");
  }
}
