package cistern.puncture.bleeding;

import static cistern.puncture.bleeding.GuidelineAnswers.FACTS;
import static cistern.puncture.bleeding.GuidelineAnswers.answer;
import static cistern.puncture.bleeding.GuidelineAnswers.plan;
import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.Status;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.Coagulation;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.Question;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AntithromboticConditionsTest {

  @Nested
  class Conditions {

    private static Given warfarin(OptionalDouble inr, Optional<OffsetDateTime> at) {
      return Given.nothing()
          .taking(Given.drug("Warfarin", DoseClass.UNKNOWN, 130))
          .clearance(90)
          .coagulation(new Coagulation(OptionalDouble.empty(), inr, OptionalDouble.empty(), at));
    }

    /** Dodd 2018: 5 d and INR ≤ 1.4 on the same day. */
    @ParameterizedTest
    @CsvSource({
      "1.4, 2031-03-02T06:00:00Z, PASSED",
      "1.41, 2031-03-02T06:00:00Z, NOT_PASSED",
      "1.4, 2031-03-01T23:00:00Z, ASK",
      "1.4, 2031-03-02T01:00:00+02:00, ASK",
      "1.4, , ASK",
      ", 2031-03-02T06:00:00Z, ASK"
    })
    void check_warfarin_needsTheInrOfTheDay(Double inr, String at, HoldVerdict verdict) {
      Given given =
          warfarin(
              inr == null ? OptionalDouble.empty() : OptionalDouble.of(inr),
              Optional.ofNullable(at).map(OffsetDateTime::parse));

      assertThat(answer(plan(given), "abn-2018").verdict()).isEqualTo(verdict);
    }

    @Test
    void check_inrNormal_isTheLaboratorysWordAndNotANumber() {
      Given asked = warfarin(OptionalDouble.of(1.0), Optional.of(Given.PLANNED));
      assertThat(answer(plan(asked), "esaic-esra-2022").verdict()).isEqualTo(HoldVerdict.ASK);

      Given normal = warfarin(OptionalDouble.of(1.0), Optional.of(Given.PLANNED));
      normal.yes(Question.INR_NORMAL);
      assertThat(answer(plan(normal), "esaic-esra-2022").verdict()).isEqualTo(HoldVerdict.PASSED);
    }

    @Test
    void check_heparinByVein_needsTheApttRatio() {
      Given given =
          Given.nothing()
              .taking(Given.drug("ufh-iv", DoseClass.UNKNOWN, 6))
              .clearance(90)
              .with(Question.APTT_NORMAL, Answer.YES)
              .coagulation(
                  new Coagulation(
                      OptionalDouble.empty(),
                      OptionalDouble.empty(),
                      OptionalDouble.of(1.5),
                      Optional.empty()));

      assertThat(answer(plan(given), "abn-2018").verdict()).isEqualTo(HoldVerdict.NOT_PASSED);
      assertThat(answer(plan(given), "clinical-reference").verdict()).isEqualTo(HoldVerdict.PASSED);
    }

    @Test
    void check_heparinUnderSkinWithNormalAptt_isPassedBeforeTheInterval() {
      Given given =
          Given.nothing().taking(Given.drug("ufh-sc", DoseClass.LOW, 1)).yes(Question.APTT_NORMAL);

      assertThat(answer(plan(given), "clinical-reference").verdict()).isEqualTo(HoldVerdict.PASSED);
    }

    /** Kietaibl 2022 as quoted: < 30 ng/mL, or anti-Xa ≤ 0.1 IU/mL. */
    @ParameterizedTest
    @CsvSource({
      "29.9, , PASSED",
      "30, , NOT_PASSED",
      ", 0.1, PASSED",
      ", 0.11, NOT_PASSED",
      ", , ASK"
    })
    void check_level_decidesUnderThirty(Double level, Double antiXa, HoldVerdict verdict) {
      Antithrombotic taken =
          new Antithrombotic(
              "apixaban",
              DoseClass.HIGH,
              Optional.empty(),
              OptionalDouble.of(20),
              new Antithrombotic.Level(
                  level == null ? OptionalDouble.empty() : OptionalDouble.of(level),
                  antiXa == null ? OptionalDouble.empty() : OptionalDouble.of(antiXa),
                  Answer.UNKNOWN));

      assertThat(
              answer(plan(Given.nothing().taking(taken).clearance(20)), "esaic-esra-2022")
                  .verdict())
          .isEqualTo(verdict);
    }

    @Test
    void check_thrombinTime_decidesForDabigatranUnderFifty() {
      Antithrombotic taken =
          new Antithrombotic(
              "dabigatran",
              DoseClass.HIGH,
              Optional.empty(),
              OptionalDouble.of(20),
              new Antithrombotic.Level(OptionalDouble.empty(), OptionalDouble.empty(), Answer.YES));

      assertThat(
              answer(plan(Given.nothing().taking(taken).clearance(40)), "esaic-esra-2022")
                  .verdict())
          .isEqualTo(HoldVerdict.PASSED);
    }

    /** A guideline text, probably Tumani 2020: dabigatran with GFR < 50, more than 3 d. */
    @ParameterizedTest
    @CsvSource({"72, NOT_PASSED", "72.5, PASSED"})
    void check_moreThanThreeDays_isStrict(double hours, HoldVerdict verdict) {
      assertThat(answer("german-s1-2020", "dabigatran", DoseClass.HIGH, 40, hours).verdict())
          .isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({"47.9, NOT_PASSED", "48, ASK", "71.9, ASK", "72, PASSED"})
    void check_insideARange_asks(double hours, HoldVerdict verdict) {
      assertThat(answer("german-s1-2020", "apixaban", DoseClass.HIGH, 90, hours).verdict())
          .isEqualTo(verdict);
    }

    @Test
    void check_twoTimes_winOverStatedHours() {
      Antithrombotic taken =
          new Antithrombotic(
              "lmwh",
              DoseClass.LOW,
              Optional.of(Given.PLANNED.minusHours(13)),
              OptionalDouble.of(2),
              Antithrombotic.Level.UNKNOWN);

      assertThat(answer(plan(Given.nothing().taking(taken).clearance(90)), "abn-2018").verdict())
          .isEqualTo(HoldVerdict.PASSED);
    }
  }

  @Nested
  class LocalPolicy {

    private static Facts with(String row, double hours) {
      return FACTS.with(
          new Policy(
              "ward",
              Map.of(
                  row + ".hold-lower",
                  new Policy.Change(new FactValue.Figure(hours), "ward rule 3"),
                  row + ".hold-upper",
                  new Policy.Change(new FactValue.Figure(hours), "ward rule 3"))));
    }

    @Test
    void check_localInterval_isShownAsLocal() {
      Facts local = with("antithrombotic.local.apixaban.high.any", 60);
      AntithromboticPlan plan =
          GuidelineAnswers.plans(
                  local,
                  Given.nothing()
                      .taking(Given.drug("apixaban", DoseClass.HIGH, 60))
                      .clearance(90)
                      .before())
              .getFirst();

      assertThat(answer(plan, "local").verdict()).isEqualTo(HoldVerdict.PASSED);
      assertThat(answer(plan, "local").hold()).contains(new Hours(60, 60));
      assertThat(answer(plan, "local").grounds().status()).isEqualTo(Status.LOCAL);
    }

    @Test
    void check_unreadIntervalConfirmedLocally_isShown() {
      Facts local = with("antithrombotic.esaic-esra-2022.ticagrelor.any.any", 96);
      AntithromboticPlan plan =
          GuidelineAnswers.plans(
                  local,
                  Given.nothing().taking(Given.drug("ticagrelor", DoseClass.UNKNOWN, 12)).before())
              .getFirst();

      assertThat(answer(plan, "esaic-esra-2022").hold()).contains(new Hours(96, 96));
      assertThat(answer(plan, "esaic-esra-2022").grounds().status()).isEqualTo(Status.LOCAL);
    }
  }
}
