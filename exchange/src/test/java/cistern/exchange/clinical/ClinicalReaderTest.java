package cistern.exchange.clinical;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.criteria.Count;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.differential.Prior;
import cistern.differential.Serology;
import cistern.exchange.json.Fields;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.JsonDocument;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.weighing.ClinicalPicture;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClinicalReaderTest {

  private final InputProblems problems = new InputProblems();

  private ClinicalPicture read(String json) {
    InputLimits limits = InputLimits.of(Facts.standard());
    byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
    return ClinicalReader.read(
        Fields.of(
            JsonDocument.read(new ByteArrayInputStream(bytes), limits, problems).orElseThrow(),
            limits,
            problems));
  }

  private Evidence evidence(String json) {
    return read("{\"evidence\":" + json + "}").evidence();
  }

  @Nested
  class Valid {

    @Test
    void read_nothing_unknown() {
      assertThat(read("{}")).isEqualTo(ClinicalPicture.UNKNOWN);
      assertThat(read("{}").isEvidenceStated()).isFalse();
      assertThat(evidence("{}")).isEqualTo(Evidence.UNKNOWN);
    }

    @Test
    void read_everyField_everyField() {
      Evidence evidence =
          evidence(
              """
              { "noBetterExplanation": "yes", "presentation": "attack", "attacks": 1,
                "objectiveLesions": { "atLeast": 1 }, "historicalAttack": "no",
                "regions": { "periventricular": "yes", "corticalJuxtacortical": "no",
                             "infratentorial": "yes", "spinalCord": "unknown", "opticNerve": "no" },
                "cordLesionsTwoOrMore": "unknown", "newOrMixedEnhancingLesions": "yes",
                "centralVeinSignSelectSix": "no", "paramagneticRimLesion": "yes",
                "progressionTwelveMonths": "no", "vascularRisk": "yes", "headacheDisorder": "no" }
              """);

      assertThat(evidence.presentation()).isEqualTo(Presentation.ATTACK);
      assertThat(evidence.attacks()).isEqualTo(Count.of(1));
      assertThat(evidence.objectiveLesions()).isEqualTo(Count.atLeast(1));
      assertThat(evidence.answers())
          .isEqualTo(
              Map.ofEntries(
                  Map.entry(Item.NO_BETTER_EXPLANATION, Answer.YES),
                  Map.entry(Item.HISTORICAL_ATTACK, Answer.NO),
                  Map.entry(Item.PERIVENTRICULAR, Answer.YES),
                  Map.entry(Item.CORTICAL_JUXTACORTICAL, Answer.NO),
                  Map.entry(Item.INFRATENTORIAL, Answer.YES),
                  Map.entry(Item.SPINAL_CORD, Answer.UNKNOWN),
                  Map.entry(Item.OPTIC_NERVE, Answer.NO),
                  Map.entry(Item.CORD_LESIONS_TWO_OR_MORE, Answer.UNKNOWN),
                  Map.entry(Item.NEW_OR_MIXED_LESIONS, Answer.YES),
                  Map.entry(Item.CENTRAL_VEIN_SIGN, Answer.NO),
                  Map.entry(Item.PARAMAGNETIC_RIM, Answer.YES),
                  Map.entry(Item.PROGRESSION_TWELVE_MONTHS, Answer.NO),
                  Map.entry(Item.VASCULAR_RISK, Answer.YES),
                  Map.entry(Item.HEADACHE_DISORDER, Answer.NO)));
      assertThat(problems.isValid()).isTrue();
      assertThat(problems.kept()).isEmpty();
    }

    @Test
    void read_unknownCount_unknown() {
      assertThat(evidence("{ \"attacks\": \"unknown\" }").attacks()).isEqualTo(Count.UNKNOWN);
    }

    @Test
    void read_prior_range() {
      assertThat(read("{\"evidence\":{\"prior\":{\"ms\":[0.3,0.6],\"usesMri\":\"yes\"}}}").prior())
          .contains(new Prior(0.3, 0.6, Answer.YES));
      assertThat(read("{\"evidence\":{\"prior\":{\"ms\":[0,1]}}}").prior())
          .contains(new Prior(0, 1, Answer.UNKNOWN));
      assertThat(read("{\"evidence\":{\"prior\":{\"usesMri\":\"yes\"}}}").prior()).isEmpty();
    }

    @Test
    void read_serology_kept() {
      assertThat(
              read("""
              {"serology":[{"test":"mog-igg","in":"serum","result":"negative"},
                           {"test":"ana","result":"positive","titre":"1:320"}]}
              """)
                  .serology())
          .isEqualTo(
              List.of(
                  new Serology("mog-igg", Compartment.SERUM, Serology.Result.NEGATIVE),
                  new Serology(
                      "ana",
                      Compartment.SERUM,
                      Serology.Result.POSITIVE,
                      Serology.Method.UNKNOWN,
                      Optional.of("1:320"))));
      assertThat(problems.kept()).isEmpty();
    }
  }

  @Nested
  class NotUnderstood {

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            {"evidence":{"mri":"yes"}} | evidence.mri
            {"evidence":{"spinalCord":"yes"}} | evidence.spinalCord
            {"evidence":{"regions":{"cerebellum":"yes"}}} | evidence.regions.cerebellum
            {"evidence":{"attacks":{"atLeast":1,"most":3}}} | evidence.attacks.most
            {"evidence":{"prior":{"ris":[0,1]}}} | evidence.prior.ris
            {"serology":[{"test":"mog-igg","result":"negative","lab":"x"}]} | serology[0].lab
            """)
    void read_unknownField_keptWithItsPlace(String json, String place) {
      read(json);

      assertThat(problems.isValid()).isTrue();
      assertThat(problems.kept()).extracting(Problem::place).containsExactly(place);
    }
  }

  @Nested
  class NotValid {

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            {"evidence":[]} | evidence
            {"evidence":{"presentation":"relapse"}} | evidence.presentation
            {"evidence":{"historicalAttack":"maybe"}} | evidence.historicalAttack
            {"evidence":{"attacks":-1}} | evidence.attacks
            {"evidence":{"attacks":1.5}} | evidence.attacks
            {"evidence":{"attacks":"two"}} | evidence.attacks
            {"evidence":{"attacks":{}}} | evidence.attacks.atLeast
            {"evidence":{"attacks":{"atLeast":-2}}} | evidence.attacks.atLeast
            {"evidence":{"prior":{"ms":[0.6,0.3]}}} | evidence.prior.ms
            {"evidence":{"prior":{"ms":[0.6]}}} | evidence.prior.ms
            {"evidence":{"prior":{"ms":[0.6,1.3]}}} | evidence.prior.ms
            {"evidence":{"prior":{"ms":0.6}}} | evidence.prior.ms
            {"serology":[{"result":"negative"}]} | serology[0].test
            {"serology":[{"test":"mog-igg"}]} | serology[0].result
            {"serology":[{"test":"mog-igg","result":"weak"}]} | serology[0].result
            {"serology":[{"test":"mog-igg","result":"negative","in":"urine"}]} | serology[0].in
            """)
    void read_bad_onePlace(String json, String place) {
      read(json);

      assertThat(problems.invalid()).extracting(InputProblem::place).containsExactly(place);
    }
  }
}
