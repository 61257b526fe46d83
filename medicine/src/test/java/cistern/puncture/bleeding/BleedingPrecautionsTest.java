package cistern.puncture.bleeding;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.measurement.Answer;
import cistern.puncture.bleeding.ThresholdAnswer.Standing;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Coagulation;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.Question;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BleedingPrecautionsTest {

  private static final Facts FACTS = Facts.standard();

  private static List<Precaution> check(Facts facts, Before before) {
    return BleedingPrecautions.of(facts)
        .check(
            before,
            Thresholds.of(facts).check(before.anticoagulation().coagulation()),
            GuidelineAnswers.plans(facts, before));
  }

  private static Precaution find(Given given, String code) {
    return check(FACTS, given.before()).stream()
        .filter(p -> p.code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private static Coagulation platelets(double value) {
    return new Coagulation(
        OptionalDouble.of(value), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
  }

  private static Standing standing(ClottingTest test, String guideline, double value) {
    OptionalDouble given = OptionalDouble.of(value);
    OptionalDouble none = OptionalDouble.empty();
    Coagulation measured =
        switch (test) {
          case PLATELETS -> new Coagulation(given, none, none, Optional.empty());
          case INR -> new Coagulation(none, given, none, Optional.empty());
          case APTT_RATIO -> new Coagulation(none, none, given, Optional.empty());
        };
    return Thresholds.of(FACTS).check(measured).stream()
        .filter(a -> a.test() == test && a.guideline().code().equals(guideline))
        .findFirst()
        .orElseThrow()
        .standing();
  }

  @Nested
  class Published {

    private static final String ROWS =
        """
        PLATELETS, aabb-2015, 50, CLEAR
        PLATELETS, aabb-2015, 49, OUTSIDE
        PLATELETS, aabb-ictmg-2025, 20, CLEAR
        PLATELETS, aabb-ictmg-2025, 19, OUTSIDE
        PLATELETS, german-s1, 51, CLEAR
        PLATELETS, german-s1, 50, BETWEEN
        PLATELETS, german-s1, 10, BETWEEN
        PLATELETS, german-s1, 9, OUTSIDE
        PLATELETS, sir-2019-low, 20, CLEAR
        PLATELETS, sir-2019-high, 49, OUTSIDE
        PLATELETS, abn-2018, 40, CLEAR
        PLATELETS, abn-2018, 20, BETWEEN
        PLATELETS, abn-2018, 19, OUTSIDE
        PLATELETS, bsh-2017, 39, BETWEEN
        PLATELETS, asco-2018, 50, CLEAR
        PLATELETS, asco-2018, 45, BETWEEN
        PLATELETS, asco-2018, 39, OUTSIDE
        PLATELETS, medical-manual, 49, OUTSIDE
        INR, sir-2019-low, 2.0, CLEAR
        INR, sir-2019-low, 3.0, BETWEEN
        INR, sir-2019-low, 3.1, OUTSIDE
        INR, sir-2019-high, 1.5, CLEAR
        INR, sir-2019-high, 1.8, BETWEEN
        INR, sir-2019-high, 1.9, OUTSIDE
        INR, abn-2018, 1.4, CLEAR
        INR, abn-2018, 1.41, OUTSIDE
        INR, medical-manual, 1.5, CLEAR
        INR, medical-manual, 1.6, OUTSIDE
        APTT_RATIO, abn-2018, 1.4, CLEAR
        APTT_RATIO, abn-2018, 1.5, OUTSIDE
        """;

    /** Each guideline's threshold at its edge, from the sources named in the fact table. */
    @ParameterizedTest
    @CsvSource(textBlock = ROWS)
    void check_everyThreshold_standsAsPublished(
        ClottingTest test, String guideline, double value, Standing standing) {
      assertThat(standing(test, guideline, value)).isEqualTo(standing);
    }

    @Test
    void check_allThresholds_areWrittenIntoTheTable() {
      long rows = ROWS.lines().count();
      assertThat(rows).isEqualTo(30);
      OutsideCheck.of(
              "Thresholds for platelets, INR and aPTT, at their edges",
              "Kaufman 2015; Metcalf 2025; Tumani 2020; Dodd 2018; SIR 2019, BSH 2017 and ASCO"
                  + " 2018 as quoted; MSD Manual",
              "equal verdicts")
          .toTable(rows + " of " + rows + " agree");
    }
  }

  @Test
  void check_plateletsBetweenGuidelines_isPresentAndNamesEach() {
    Precaution found = find(Given.nothing().coagulation(platelets(45)), "platelets");

    assertThat(found.state()).isEqualTo(Precaution.State.PRESENT);
    assertThat(found.text())
        .contains("platelets 45 × 10⁹/L", "AABB 2015", "German S1 guideline 2020", "no objection");
  }

  @Test
  void check_plateletsClearForAll_isChecked() {
    assertThat(find(Given.nothing().coagulation(platelets(200)), "platelets").state())
        .isEqualTo(Precaution.State.CHECKED);
  }

  @Test
  void check_nothingMeasured_isOpenForEveryTest() {
    for (String code : List.of("platelets", "inr", "aptt-ratio")) {
      assertThat(find(Given.nothing(), code).state()).isEqualTo(Precaution.State.OPEN);
    }
  }

  @Test
  void check_dateOfTheBlood_isShown() {
    Coagulation dated =
        new Coagulation(
            OptionalDouble.of(200),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.of(Given.PLANNED));

    assertThat(find(Given.nothing().coagulation(dated), "platelets").text())
        .contains("2031-03-02", "local policy");
  }

  @Test
  void check_localLimit_joinsTheList() {
    Facts local =
        FACTS.with(
            new Policy(
                "ward",
                Map.of(
                    "coagulation.platelets.local.clear-from",
                    new Policy.Change(new FactValue.Figure(80), "ward rule"))));

    assertThat(Thresholds.of(local).check(platelets(70)))
        .filteredOn(a -> a.guideline().code().equals("local"))
        .extracting(ThresholdAnswer::standing)
        .containsExactly(Standing.OUTSIDE);
    assertThat(Thresholds.of(FACTS).check(platelets(70)))
        .noneMatch(a -> a.guideline().code().equals("local"));
  }

  @Nested
  class Antithrombotic {

    @Test
    void check_nobodyAsked_isOpen() {
      assertThat(find(Given.nothing(), "antithrombotic").state()).isEqualTo(Precaution.State.OPEN);
    }

    @Test
    void check_noneTaken_isChecked() {
      assertThat(find(Given.nothing().taking(), "antithrombotic").state())
          .isEqualTo(Precaution.State.CHECKED);
    }

    @Test
    void check_twoTaken_saysThatNoIntervalWasWrittenForBoth() {
      Given given =
          Given.nothing()
              .taking(
                  Given.drug("aspirin", DoseClass.UNKNOWN, 5),
                  Given.drug("clopidogrel", DoseClass.UNKNOWN, 5));

      assertThat(find(given, "antithrombotic").text()).contains("aspirin, clopidogrel");
      assertThat(find(given, "antithrombotics-two").state()).isEqualTo(Precaution.State.PRESENT);
    }

    @Test
    void check_doseAfterThePuncture_isNamed() {
      assertThat(
              find(
                      Given.nothing().taking(Given.drug("lmwh", DoseClass.LOW, -2)),
                      "dose-after-puncture")
                  .state())
          .isEqualTo(Precaution.State.PRESENT);
    }

    @Test
    void check_guidelinesDisagree_areShownAndNotAveraged() {
      Given given =
          Given.nothing().taking(Given.drug("apixaban", DoseClass.HIGH, 50)).clearance(90);

      assertThat(find(given, "guidelines-disagree").text())
          .contains(
              "ESAIC/ESRA 2022 not-passed",
              "NHS Lothian antithrombotic guide (draft, undated) passed");
    }
  }

  /** Dodd 2018: stents under 12 and 1 months; clots under 3 months; valves; atrial fibrillation. */
  @Nested
  class DoNotInterrupt {

    private static Precaution.State state(Given given, String code) {
      return check(FACTS, given.before()).stream()
          .filter(p -> p.code().equals(code))
          .map(Precaution::state)
          .findFirst()
          .orElse(Precaution.State.CHECKED);
    }

    @ParameterizedTest
    @CsvSource({
      "DRUG_ELUTING_STENT, 11.9, PRESENT",
      "DRUG_ELUTING_STENT, 12, CHECKED",
      "BARE_METAL_STENT, 0.9, PRESENT",
      "BARE_METAL_STENT, 1, CHECKED",
      "DRUG_ELUTING_STENT, , OPEN"
    })
    void check_stent_isRecentUnderItsMonths(Question stent, Double ago, Precaution.State state) {
      Given given = Given.allNo().yes(stent).taking(Given.drug("aspirin", DoseClass.UNKNOWN, 5));
      if (ago != null) {
        given.monthsAgo(stent, ago);
      }
      assertThat(state(given, "recent-stent")).isEqualTo(state);
    }

    @ParameterizedTest
    @CsvSource({
      "VENOUS_THROMBOEMBOLISM, 2.9, PRESENT",
      "VENOUS_THROMBOEMBOLISM, 3, CHECKED",
      "THROMBOSIS_ON_TREATMENT, , PRESENT",
      "MECHANICAL_VALVE, , PRESENT"
    })
    void check_clotOrValve_isHighRisk(Question event, Double ago, Precaution.State state) {
      Given given = Given.allNo().yes(event).taking(Given.drug("warfarin", DoseClass.UNKNOWN, 5));
      if (ago != null) {
        given.monthsAgo(event, ago);
      }
      assertThat(state(given, "high-thrombotic-risk")).isEqualTo(state);
    }

    @Test
    void check_bileafletAorticValve_isNotHighRiskWhenKnown() {
      Given valve =
          Given.allNo()
              .yes(Question.MECHANICAL_VALVE)
              .taking(Given.drug("warfarin", DoseClass.UNKNOWN, 5));
      assertThat(state(valve.yes(Question.BILEAFLET_AORTIC_VALVE), "high-thrombotic-risk"))
          .isEqualTo(Precaution.State.CHECKED);
      assertThat(
              state(
                  valve.with(Question.BILEAFLET_AORTIC_VALVE, Answer.UNKNOWN),
                  "high-thrombotic-risk"))
          .isEqualTo(Precaution.State.OPEN);
    }

    @ParameterizedTest
    @CsvSource({
      "2, , PRESENT",
      "10, 3, PRESENT",
      "10, 2, CHECKED",
      "10, , OPEN",
      ", 3, PRESENT",
      ", 2, OPEN"
    })
    void check_strokeWithAtrialFibrillation_weighsTimeAndScore(
        Double ago, Double score, Precaution.State state) {
      Given given =
          Given.allNo()
              .yes(Question.ATRIAL_FIBRILLATION, Question.STROKE_OR_TIA)
              .taking(Given.drug("apixaban", DoseClass.HIGH, 5));
      if (ago != null) {
        given.monthsAgo(Question.STROKE_OR_TIA, ago);
      }
      if (score != null) {
        given.score(score);
      }
      assertThat(state(given, "high-thrombotic-risk")).isEqualTo(state);
    }

    @Test
    void check_unknownRisk_isAskedOnlyWhenSomethingMayBeTaken() {
      assertThat(state(Given.nothing(), "high-thrombotic-risk")).isEqualTo(Precaution.State.OPEN);
      assertThat(check(FACTS, Given.nothing().taking().before()).stream().map(Precaution::code))
          .doesNotContain("high-thrombotic-risk", "recent-stent");
    }
  }
}
