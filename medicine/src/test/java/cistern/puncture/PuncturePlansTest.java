package cistern.puncture;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.puncture.ResultEffect.Effect;
import cistern.puncture.bleeding.HoldVerdict;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.readiness.Guidance;
import java.util.List;
import org.junit.jupiter.api.Test;

class PuncturePlansTest {

  private static PuncturePlan plan(Given given, Effect... effects) {
    List<ResultEffect> both =
        effects.length == 0
            ? List.of()
            : List.of(new ResultEffect("2017", effects[0]), new ResultEffect("2024", effects[1]));
    return PuncturePlans.of(Facts.standard())
        .of(
            new Procedure(given.before(), Done.UNKNOWN, After.UNKNOWN),
            Given.subject(74, "female"),
            both);
  }

  @Test
  void of_anticoagulatedPersonWithPoorKidneysAndFusedSpine_showsEveryAnswerAndReason() {
    PuncturePlan plan =
        plan(
            Given.nothing()
                .taking(Given.drug("apixaban", DoseClass.HIGH, 40))
                .clearance(22)
                .yes(Question.LUMBAR_FUSION, Question.ATRIAL_FIBRILLATION));

    assertThat(plan.bleeding().antithrombotics().getFirst().answers())
        .hasSizeGreaterThanOrEqualTo(7)
        .allSatisfy(a -> assertThat(a.reason()).isNotBlank());
    assertThat(plan.bleeding().antithrombotics().getFirst().answers())
        .extracting(a -> a.guideline().code() + " " + a.verdict().word())
        .contains("abn-2018 ask", "esaic-esra-2022 ask", "uk-regional not-passed", "local ask")
        .doesNotContain("abn-2018 " + HoldVerdict.PASSED.word());
    assertThat(plan.technique().guidance().method())
        .isEqualTo(Guidance.Method.ULTRASOUND_OR_FLUOROSCOPY);
    assertThat(plan.readiness().with(Precaution.State.PRESENT))
        .extracting(Precaution::code)
        .contains("antithrombotic", "spine-at-site");
  }

  @Test
  void of_anyPlan_givesEveryPrecautionGroundsAndOnlyOneOfEachCode() {
    PuncturePlan plan = plan(Given.nothing());

    assertThat(plan.readiness().precautions())
        .allSatisfy(p -> assertThat(p.grounds().sources()).isNotEmpty())
        .extracting(Precaution::code)
        .doesNotHaveDuplicates();
    assertThat(plan.readiness().consent()).hasSizeGreaterThan(10);
    assertThat(plan.afterwards().headache().open()).isNotEmpty();
  }

  @Test
  void isWithoutEffect_onlyWhenEveryEditionSaysSo() {
    assertThat(plan(Given.nothing(), Effect.NO_EFFECT, Effect.NO_EFFECT).isWithoutEffect())
        .isTrue();
    assertThat(plan(Given.nothing(), Effect.NO_EFFECT, Effect.NARROWS).isWithoutEffect()).isFalse();
    assertThat(plan(Given.nothing()).isWithoutEffect()).isFalse();
  }

  @Test
  void of_nothingKnown_plansWithoutAssuming() {
    PuncturePlan plan =
        PuncturePlans.of(Facts.standard())
            .of(Procedure.UNKNOWN, PuncturedPerson.UNKNOWN, List.of());

    assertThat(plan.readiness().with(Precaution.State.CHECKED)).isEmpty();
    assertThat(plan.afterwards().pressure()).isEmpty();
    assertThat(plan.afterwards().outstanding()).isEmpty();
    assertThat(plan.technique().headacheRisk().high())
        .isGreaterThan(plan.technique().headacheRisk().low());
  }
}
