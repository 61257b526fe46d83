package cistern.puncture.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.readiness.Guidance.Advice;
import cistern.puncture.readiness.Guidance.Method;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuidanceRulesTest {

  private static final GuidanceRules RULES = GuidanceRules.of(Facts.standard());

  private static Guidance check(Given given) {
    return RULES.check(given.before(), Given.subject(50, "male"));
  }

  /** AJNR 2016;37:572: inches = 0.077 · BMI + 0.88, so BMI 30 ≈ 8.1 cm and 40 ≈ 10.1 cm. */
  @ParameterizedTest
  @CsvSource({"30, 8.1, false", "40, 10.1, true"})
  void depth_fromBmi_isThePrintedOne(double bmi, double cm, boolean isDeep) {
    Guidance.Depth depth = check(Given.allNo().bmi(bmi)).depth().orElseThrow();

    assertThat(depth.cm()).isEqualTo(cm, within(0.05));
    assertThat(depth.isDeep()).isEqualTo(isDeep);
    assertThat(depth.isMeasured()).isFalse();
    OutsideCheck.of(
            "Depth of the oblique route at BMI " + bmi,
            "AJNR 2016;37:572, arithmetic of the project's facts",
            "0.05 cm")
        .toTable("agrees");
  }

  /** Halpenny 2013: over 9 cm. */
  @ParameterizedTest
  @CsvSource({"9, LANDMARKS", "9.1, ULTRASOUND"})
  void check_measuredDepth_isDeepOverNine(double cm, Method method) {
    assertThat(check(Given.allNo().depth(cm)).method()).isEqualTo(method);
  }

  @ParameterizedTest
  @CsvSource({
    "LUMBAR_FUSION, ULTRASOUND_OR_FLUOROSCOPY",
    "SCOLIOSIS, ULTRASOUND_OR_FLUOROSCOPY",
    "SEVERE_ARTHRITIS, ULTRASOUND_OR_FLUOROSCOPY",
    "FAILED_ATTEMPT, ULTRASOUND_OR_FLUOROSCOPY",
    "LANDMARKS_NOT_FELT, ULTRASOUND_OR_FLUOROSCOPY",
    "LAMINECTOMY, ULTRASOUND",
    "OTHER_SPINE_SURGERY, ULTRASOUND",
    "SPINE_ANOMALY, ULTRASOUND"
  })
  void check_difficulty_offersImagingWithItsReason(Question difficulty, Method method) {
    Guidance guidance = check(Given.allNo().yes(difficulty).bmi(22));

    assertThat(guidance.method()).isEqualTo(method);
    assertThat(guidance.reasons()).containsExactly(difficulty.term());
  }

  @Test
  void check_noDifficulty_saysWhyImagingIsNotTheDefault() {
    Guidance guidance = check(Given.allNo().bmi(22));

    assertThat(guidance.method()).isEqualTo(Method.LANDMARKS);
    assertThat(guidance.open()).isEmpty();
    assertThat(guidance.advice())
        .filteredOn(a -> a.code().equals("default"))
        .extracting(Advice::text)
        .allSatisfy(t -> assertThat(t).contains("common practice, no source", "radiation"));
  }

  @Test
  void check_nothingKnown_asks() {
    assertThat(check(Given.nothing()).open()).hasSize(9);
  }

  /** PMID 23729498: fluoroscopy 2.9 (0.9–9.4) mSv, CT 1.98 (0.2–8.18) mSv. */
  @Test
  void check_doses_areThePublishedOnes() {
    assertThat(check(Given.allNo()).doses())
        .extracting(GuidanceRules::toText)
        .containsExactly("fluoroscopy: mean 2.9 mSv (0.9–9.4)", "ct: mean 1.98 mSv (0.2–8.18)");
  }

  @ParameterizedTest
  @CsvSource({"YES, 1", "UNKNOWN, 1", "NO, 0"})
  void check_fluoroscopyInAWoman_asksAboutPregnancyFirst(Answer pregnancy, int count) {
    PuncturedPerson woman =
        new PuncturedPerson(
            OptionalDouble.of(30),
            Optional.of("female"),
            pregnancy,
            Answer.UNKNOWN,
            PuncturedPerson.Draw.UNKNOWN);

    assertThat(RULES.check(Given.allNo().yes(Question.LUMBAR_FUSION).before(), woman).advice())
        .filteredOn(a -> a.code().equals("pregnancy"))
        .hasSize(count);
  }

  @Test
  void technique_advice_showsEffectsAndBothSidesOfAConflict() {
    assertThat(RULES.technique())
        .extracting(Advice::code)
        .contains("atraumatic", "atraumatic.exception", "gauge.fine", "gauge.practical", "rest");
    assertThat(RULES.technique()).allSatisfy(a -> assertThat(a.grounds().sources()).isNotEmpty());
  }
}
