package cistern.puncture.bleeding;

import static cistern.puncture.bleeding.GuidelineAnswers.FACTS;
import static cistern.puncture.bleeding.GuidelineAnswers.answer;
import static cistern.puncture.bleeding.GuidelineAnswers.plan;
import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.fact.Status;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class AntithromboticsTest {

  /**
   * The published intervals row by row: Dodd 2018 (ABN, clearance ≥ 50), Kietaibl 2022
   * (ESAIC/ESRA), ASRA as quoted, NHS Lothian, UKCPA, McMaster Textbook. Least and most hours; the
   * status each was read with.
   */
  @Nested
  class Published {

    private static final String ROWS =
        """
        abn-2018, clopidogrel, UNKNOWN, 90, 168, 168, 6, 6, READ
        abn-2018, prasugrel, UNKNOWN, 90, 168, 168, 6, 6, READ
        abn-2018, ticagrelor, UNKNOWN, 90, 168, 168, 6, 6, READ
        abn-2018, dipyridamole, UNKNOWN, 90, 24, 24, 6, 6, READ
        abn-2018, cilostazol, UNKNOWN, 90, 42, 42, 6, 6, READ
        abn-2018, tirofiban, UNKNOWN, 90, 4, 8, 24, 24, READ
        abn-2018, eptifibatide, UNKNOWN, 90, 4, 8, 24, 24, READ
        abn-2018, abciximab, UNKNOWN, 90, 48, 48, 24, 24, READ
        abn-2018, warfarin, UNKNOWN, 90, 120, 120, 12, 12, READ
        abn-2018, lmwh, LOW, 90, 12, 12, 4, 4, READ
        abn-2018, lmwh, HIGH, 90, 24, 24, 4, 4, READ
        abn-2018, ufh-iv, UNKNOWN, 90, 4, 6, 1, 1, READ
        abn-2018, fondaparinux, LOW, 90, 36, 36, 6, 12, READ
        abn-2018, dabigatran, HIGH, 90, 48, 72, 6, 6, READ
        abn-summary, apixaban, HIGH, 90, 24, 48, , , SECOND_HAND
        abn-summary, rivaroxaban, HIGH, 90, 24, 48, , , SECOND_HAND
        esaic-esra-2022, warfarin, UNKNOWN, 90, 120, 120, , , SECOND_HAND
        esaic-esra-2022, acenocoumarol, UNKNOWN, 90, 72, 72, , , SECOND_HAND
        esaic-esra-2022, phenprocoumon, UNKNOWN, 90, 168, 168, , , SECOND_HAND
        esaic-esra-2022, lmwh, LOW, 40, 12, 12, , , SECOND_HAND
        esaic-esra-2022, lmwh, LOW, 20, 24, 24, , , SECOND_HAND
        esaic-esra-2022, lmwh, HIGH, 40, 24, 24, , , SECOND_HAND
        esaic-esra-2022, lmwh, HIGH, 20, 48, 48, , , SECOND_HAND
        esaic-esra-2022, ufh-sc, LOW, 90, 4, 4, 1, 1, SECOND_HAND
        esaic-esra-2022, rivaroxaban, LOW, 90, 24, 24, 6, 6, SECOND_HAND
        esaic-esra-2022, rivaroxaban, LOW, 20, 30, 30, 6, 6, SECOND_HAND
        esaic-esra-2022, rivaroxaban, HIGH, 90, 72, 72, 24, 24, SECOND_HAND
        esaic-esra-2022, apixaban, LOW, 90, 36, 36, 6, 6, SECOND_HAND
        esaic-esra-2022, apixaban, HIGH, 90, 72, 72, 24, 24, SECOND_HAND
        esaic-esra-2022, edoxaban, LOW, 90, 24, 24, 6, 6, SECOND_HAND
        esaic-esra-2022, edoxaban, LOW, 20, 30, 30, 6, 6, SECOND_HAND
        esaic-esra-2022, edoxaban, HIGH, 90, 72, 72, 24, 24, SECOND_HAND
        esaic-esra-2022, dabigatran, LOW, 90, 48, 48, 6, 6, SECOND_HAND
        esaic-esra-2022, dabigatran, HIGH, 90, 72, 72, 24, 24, SECOND_HAND
        asra-2003, clopidogrel, UNKNOWN, 90, 168, 168, , , SECOND_HAND
        asra-2003, lmwh, LOW, 90, 12, 12, , , SECOND_HAND
        asra-2003, lmwh, HIGH, 90, 24, 24, 24, 24, SECOND_HAND
        asra-2018, dabigatran, HIGH, 90, 72, 72, , , SECOND_HAND
        asra-2018, dabigatran, HIGH, 70, 96, 96, , , SECOND_HAND
        asra-2018, dabigatran, HIGH, 60, 96, 96, , , SECOND_HAND
        clinical-reference, warfarin, UNKNOWN, 90, 96, 120, , , SECOND_HAND
        clinical-reference, ufh-iv, UNKNOWN, 90, 4, 6, 1, 1, SECOND_HAND
        clinical-reference, ufh-sc, LOW, 90, 4, 6, , , SECOND_HAND
        clinical-reference, rivaroxaban, LOW, 90, 24, 24, 6, 6, SECOND_HAND
        clinical-reference, rivaroxaban, LOW, 20, 30, 30, 6, 6, SECOND_HAND
        clinical-reference, rivaroxaban, HIGH, 20, 72, 72, 24, 24, SECOND_HAND
        clinical-reference, apixaban, LOW, 90, 36, 36, , , SECOND_HAND
        clinical-reference, apixaban, HIGH, 90, 72, 72, 24, 24, SECOND_HAND
        german-s1-2020, apixaban, HIGH, 90, 48, 72, , , SECOND_HAND
        german-s1-2020, dabigatran, HIGH, 90, 48, 72, , , SECOND_HAND
        german-s1-2020, dabigatran, HIGH, 40, 72, 72, , , SECOND_HAND
        uk-regional, clopidogrel, UNKNOWN, 90, 168, 168, , , READ
        uk-regional, apixaban, HIGH, 40, 48, 48, , , READ
        uk-regional, apixaban, HIGH, 20, 72, 72, , , READ
        uk-regional, dabigatran, HIGH, 60, 48, 48, , , READ
        uk-regional, dabigatran, HIGH, 40, 96, 96, , , READ
        uk-perioperative, clopidogrel, UNKNOWN, 90, 168, 168, , , READ
        uk-perioperative, ticagrelor, UNKNOWN, 90, 120, 120, , , READ
        medical-handbook, fondaparinux, LOW, 90, 24, 36, 6, 12, READ
        medical-handbook, fondaparinux, HIGH, 90, 48, 72, 12, 24, READ
        """;

    static Stream<String> rows() {
      return ROWS.lines();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void check_everyPublishedRow_showsItsHoursAndStatus(String row) {
      List<String> cells = Stream.of(row.split(",", -1)).map(String::strip).toList();
      GuidelineAnswer answer =
          answer(
              cells.get(0),
              cells.get(1),
              DoseClass.valueOf(cells.get(2)),
              Double.parseDouble(cells.get(3)),
              1);

      assertThat(answer.hold()).contains(hours(cells.get(4), cells.get(5)));
      assertThat(answer.restart())
          .isEqualTo(
              cells.get(6).isEmpty()
                  ? Optional.empty()
                  : Optional.of(hours(cells.get(6), cells.get(7))));
      assertThat(answer.grounds().status()).isEqualTo(Status.valueOf(cells.get(8)));
      assertThat(answer.verdict()).isEqualTo(HoldVerdict.NOT_PASSED);
    }

    private static Hours hours(String least, String most) {
      return new Hours(Double.parseDouble(least), Double.parseDouble(most));
    }

    @Test
    void check_allRows_areWrittenIntoTheTable() {
      long rows = ROWS.lines().count();
      OutsideCheck.of(
              "Intervals for antithrombotics, row by row",
              "Dodd 2018; Kietaibl 2022 and ASRA as quoted; handbooks named in the fact table",
              "equal hours")
          .toTable(rows + " rows agree");
      assertThat(rows).isEqualTo(60);
    }

    /** Dodd 2018: avoid lumbar puncture on fondaparinux 7.5 mg; McMaster Textbook: 48–72 h. */
    @Test
    void check_fondaparinuxHighDose_showsBothSidesOfTheConflict() {
      AntithromboticPlan plan =
          plan(
              Given.nothing().taking(Given.drug("fondaparinux", DoseClass.HIGH, 80)).clearance(90));

      assertThat(answer(plan, "abn-2018").verdict()).isEqualTo(HoldVerdict.NOT_PASSED);
      assertThat(answer(plan, "abn-2018").hold()).isEmpty();
      assertThat(answer(plan, "medical-handbook").verdict()).isEqualTo(HoldVerdict.PASSED);
      assertThat(plan.disagree()).isTrue();
    }

    /** Kietaibl 2022 as quoted: under 30 mL/min a level decides for every oral Xa inhibitor. */
    @ParameterizedTest
    @CsvSource({"rivaroxaban", "apixaban", "edoxaban"})
    void check_oralXaInhibitorWithPoorKidneys_asksForALevel(String drug) {
      GuidelineAnswer answer = answer("esaic-esra-2022", drug, DoseClass.HIGH, 22, 500);

      assertThat(answer.verdict()).isEqualTo(HoldVerdict.ASK);
      assertThat(answer.hold()).isEmpty();
      assertThat(answer.conditions()).contains("drug level < 30 ng/mL", "anti-Xa ≤ 0.1 IU/mL");
    }

    /** US labels as quoted: rivaroxaban 24 h, apixaban 48 h, LMWH 24 h after a bloody tap. */
    @ParameterizedTest
    @CsvSource({"rivaroxaban, HIGH, 24", "apixaban, LOW, 48", "lmwh, HIGH, 24"})
    void check_traumaticRestart_isShownBesideTheIntervals(
        String drug, DoseClass dose, double hours) {
      GuidelineAnswer answer = answer("us-label", drug, dose, 80, 200);

      assertThat(answer.restartTraumatic()).contains(new Hours(hours, hours));
      assertThat(answer.verdict()).isEqualTo(HoldVerdict.ASK);
    }

    @ParameterizedTest
    @CsvSource({"asra-2003, aspirin", "uk-regional, aspirin", "clinical-reference, nsaid"})
    void check_drugWithoutInterval_isPassedEvenWithoutATime(String guideline, String drug) {
      GuidelineAnswer answer =
          answer(plan(Given.nothing().taking(Given.drug(drug, DoseClass.UNKNOWN))), guideline);

      assertThat(answer.verdict()).isEqualTo(HoldVerdict.PASSED);
      assertThat(answer.hold()).contains(new Hours(0, 0));
    }
  }

  @Nested
  class Laws {

    /** Every drug that a guideline has a row for. */
    static Stream<String> drugs() {
      return HoldRule.all(FACTS).stream().map(HoldRule::drug).distinct();
    }

    private static Stream<Given> everyCase(String drug) {
      return Stream.of(DoseClass.values())
          .flatMap(
              dose ->
                  Stream.of(10.0, 29.0, 30.0, 49.0, 50.0, 80.0, 81.0, 120.0)
                      .flatMap(
                          clearance ->
                              Stream.of(0.0, 3.0, 24.0, 50.0, 100.0, 1000.0)
                                  .map(
                                      hours ->
                                          Given.nothing()
                                              .taking(Given.drug(drug, dose, hours))
                                              .clearance(clearance))));
    }

    @ParameterizedTest
    @MethodSource("drugs")
    void check_anything_neverShowsANumberRecalledFromMemory(String drug) {
      assertThat(everyCase(drug).flatMap(g -> plan(g).answers().stream()))
          .isNotEmpty()
          .allSatisfy(
              answer -> {
                if (answer.grounds().status() == Status.MEMORY) {
                  assertThat(answer.hold()).isEmpty();
                  assertThat(answer.restart()).isEmpty();
                  assertThat(answer.verdict()).isEqualTo(HoldVerdict.ASK);
                  assertThat(answer.reason())
                      .contains("ask the prescriber")
                      .doesNotMatch(".*\\d.*");
                }
              });
    }

    @ParameterizedTest
    @MethodSource("drugs")
    void check_anything_neverTellsAnybodyToStop(String drug) {
      assertThat(everyCase(drug).flatMap(g -> plan(g).answers().stream()))
          .allSatisfy(
              answer ->
                  assertThat(answer.reason().toLowerCase(java.util.Locale.ROOT))
                      .doesNotContain("stop", "withhold", "discontinue", "omit", "pause"));
    }

    @ParameterizedTest
    @MethodSource("drugs")
    void check_moreHours_neverTurnsPassedIntoNotPassed(String drug) {
      for (double clearance : List.of(20.0, 40.0, 60.0, 100.0)) {
        for (DoseClass dose : List.of(DoseClass.LOW, DoseClass.HIGH)) {
          AntithromboticPlan early =
              plan(Given.nothing().taking(Given.drug(drug, dose, 40)).clearance(clearance));
          AntithromboticPlan late =
              plan(Given.nothing().taking(Given.drug(drug, dose, 400)).clearance(clearance));
          for (int i = 0; i < early.answers().size(); i++) {
            if (early.answers().get(i).verdict() == HoldVerdict.PASSED) {
              assertThat(late.answers().get(i).verdict()).isEqualTo(HoldVerdict.PASSED);
            }
          }
        }
      }
    }

    @ParameterizedTest
    @MethodSource("drugs")
    void check_everyDrug_showsTheThreeSocietiesAndTheClinic(String drug) {
      assertThat(
              plan(Given.nothing().taking(Given.drug(drug, DoseClass.LOW, 1)).clearance(90))
                  .answers())
          .extracting(a -> a.guideline().code())
          .contains("abn-2018", "esaic-esra-2022", "asra-2025", "local");
    }
  }

  /** A project rule: a clearance within 5 mL/min of 80, 50, 30 or 15 shows both rows. */
  @Nested
  class NearAThreshold {

    /** EU product text: 50 to under 80 two to three days, 30 to under 50 four days. */
    @ParameterizedTest
    @CsvSource({"44.9, 96, 96", "45, 48, 96", "49.6, 48, 96", "55, 48, 96", "55.1, 48, 72"})
    void check_clearanceNear50_showsBothRowsOfDabigatran(
        double clearance, double least, double most) {
      GuidelineAnswer answer = answer("eu-label", "dabigatran", DoseClass.HIGH, clearance, 80);

      assertThat(answer.hold()).contains(new Hours(least, most));
      assertThat(answer.rows()).hasSize(least == most || most == 72 ? 0 : 2);
      assertThat(answer.verdict())
          .isEqualTo(
              most == 72
                  ? HoldVerdict.PASSED
                  : least == 96 ? HoldVerdict.NOT_PASSED : HoldVerdict.ASK);
    }

    @Test
    void check_underBothRows_isNotPassed() {
      assertThat(answer("eu-label", "dabigatran", DoseClass.HIGH, 49.6, 40).verdict())
          .isEqualTo(HoldVerdict.NOT_PASSED);
      assertThat(answer("eu-label", "dabigatran", DoseClass.HIGH, 49.6, 96).verdict())
          .isEqualTo(HoldVerdict.PASSED);
    }
  }

  @Nested
  class WhenSomethingIsUnknown {

    @Test
    void check_withoutClearance_asksWhereTheIntervalDependsOnIt() {
      AntithromboticPlan plan =
          plan(Given.nothing().taking(Given.drug("apixaban", DoseClass.HIGH, 400)));

      assertThat(answer(plan, "esaic-esra-2022").verdict()).isEqualTo(HoldVerdict.ASK);
      assertThat(answer(plan, "esaic-esra-2022").reason()).contains("creatinine clearance");
      assertThat(answer(plan, "clinical-reference").verdict()).isEqualTo(HoldVerdict.PASSED);
    }

    @Test
    void check_withoutClearanceUnderEveryInterval_isNotPassedWhateverTheKidneys() {
      GuidelineAnswer answer =
          answer(
              plan(Given.nothing().taking(Given.drug("lmwh", DoseClass.LOW, 4))),
              "esaic-esra-2022");

      assertThat(answer.verdict()).isEqualTo(HoldVerdict.NOT_PASSED);
      assertThat(answer.reason()).contains("whatever the creatinine clearance");
    }

    @Test
    void check_withoutDoseClass_asksAndShowsBoth() {
      GuidelineAnswer answer = answer("clinical-reference", "apixaban", DoseClass.UNKNOWN, 90, 50);

      assertThat(answer.verdict()).isEqualTo(HoldVerdict.ASK);
      assertThat(answer.reason()).contains("dose class", "low dose: 36 h", "high dose: 72 h");
    }

    /** Within 5 mL/min of a threshold both rows count; one that was not read asks. */
    @ParameterizedTest
    @ValueSource(doubles = {44.9, 45, 49.9})
    void check_clearanceUnderTheReadPart_asks(double clearance) {
      GuidelineAnswer answer = answer("abn-2018", "clopidogrel", DoseClass.UNKNOWN, clearance, 500);

      assertThat(answer.verdict()).isEqualTo(HoldVerdict.ASK);
      assertThat(answer.hold()).isEmpty();
    }

    @Test
    void check_withoutATime_asks() {
      GuidelineAnswer answer =
          answer(
              plan(Given.nothing().taking(Given.drug("lmwh", DoseClass.LOW)).clearance(90)),
              "abn-2018");

      assertThat(answer.verdict()).isEqualTo(HoldVerdict.ASK);
      assertThat(answer.reason()).contains("time from the last dose");
    }

    @Test
    void check_doseAfterThePuncture_asksAndHasNoHours() {
      Antithrombotic later =
          new Antithrombotic(
              "lmwh",
              DoseClass.LOW,
              Optional.of(Given.PLANNED.plusHours(2)),
              OptionalDouble.empty(),
              Antithrombotic.Level.UNKNOWN);
      AntithromboticPlan plan = plan(Given.nothing().taking(later).clearance(90));

      assertThat(plan.hours()).isEmpty();
      assertThat(answer(plan, "abn-2018").verdict()).isEqualTo(HoldVerdict.ASK);
    }

    @Test
    void check_unknownDrug_asksEverywhere() {
      AntithromboticPlan plan =
          plan(Given.nothing().taking(Given.drug("betrixaban", DoseClass.HIGH, 900)).clearance(90));

      assertThat(plan.answers()).extracting(GuidelineAnswer::verdict).containsOnly(HoldVerdict.ASK);
    }

    @Test
    void check_doseClassNobodyWroteFor_asks() {
      assertThat(answer("esaic-esra-2022", "ufh-sc", DoseClass.HIGH, 90, 900).reason())
          .contains("dose class");
    }
  }
}
