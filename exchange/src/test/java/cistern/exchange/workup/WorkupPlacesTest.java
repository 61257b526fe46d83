package cistern.exchange.workup;

import static cistern.exchange.workup.WorkupText.refused;
import static cistern.exchange.workup.WorkupText.understood;
import static cistern.exchange.workup.WorkupText.withBands;
import static cistern.exchange.workup.WorkupText.withResults;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.finding.Problem;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a work-up is wrong, place by place; source: the format that the project promises. */
class WorkupPlacesTest {

  private static void assertRefused(String text, InputTrouble trouble, String place) {
    assertThat(refused(text))
        .extracting(InputProblem::trouble, InputProblem::place)
        .containsExactly(tuple(trouble, place));
  }

  @Nested
  class Valid {

    @Test
    void read_everyField_isUnderstoodWithoutProblems() {
      Workup workup = understood(WorkupText.FULL);
      assertThat(workup.problems()).isEmpty();
      assertThat(workup.id()).isEqualTo("example-1");
      assertThat(workup.remarks().isInvented()).isTrue();
      assertThat(workup.remarks().question()).contains("bands?");
      assertThat(workup.panel().person().ageYears()).hasValue(34.5);
      assertThat(workup.panel().csf().site()).contains("lumbar");
      assertThat(workup.panel().serum().at()).isPresent();
      assertThat(workup.panel().answer(Circumstance.PLASMA_EXCHANGE)).isEqualTo(Answer.NO);
      assertThat(workup.panel().answer(Circumstance.CORTICOSTEROIDS)).isEqualTo(Answer.YES);
      assertThat(workup.panel().results()).hasSize(8);
      assertThat(workup.panel().find(Sample.csf(Analyte.ALBUMIN)).orElseThrow().place())
          .isEqualTo("results[0]");
      assertThat(workup.panel().find(Sample.csf(Analyte.ALBUMIN)).orElseThrow().cv())
          .hasValue(0.05);
    }

    @ParameterizedTest
    @CsvSource({
      "albumin, csf, 220",
      "albumin, serum, 42000",
      "igg, csf, 62",
      "measles-igg, csf, 3.1",
      "leukocytes, csf, 5"
    })
    void read_results_areInCanonicalUnits(String analyte, String in, double expected) {
      Sample sample =
          new Sample(Analyte.parse(analyte).orElseThrow(), Compartment.parse(in).orElseThrow());
      assertThat(understood(WorkupText.FULL).panel().find(sample).orElseThrow().value())
          .isEqualTo(Interval.of(expected));
    }

    @Test
    void read_bounds_areBounds() {
      Workup workup = understood(WorkupText.FULL);
      assertThat(workup.panel().find(Sample.csf(Analyte.KAPPA)).orElseThrow().value())
          .isEqualTo(Interval.below(0.3));
      assertThat(workup.panel().find(Sample.serum(Analyte.MEASLES_IGG)).orElseThrow().value())
          .isEqualTo(Interval.above(2000));
    }

    @Test
    void read_onlyAnId_isEnough() {
      assertThat(understood("{\"id\":\"a\"}").bands()).isEqualTo(new BandReport.NotReported());
    }

    @Test
    void read_unknownFieldsAndAnalytes_areNamedAndKept() {
      String text =
          """
          {"id":"a","x":1,"person":{"shoe size":9},"draws":{"csf":{"y":1},"urine":{}},
           "results":[{"analyte":"neopterin","in":"csf","value":3,"unit":"furlong","z":[1.50]}],
           "bands":{"q":1},"context":{"w":"yes"}}
          """;
      WorkupReading reading = WorkupText.read(text);
      WorkupReading.Understood understood = (WorkupReading.Understood) reading;
      assertThat(understood.workup().problems())
          .extracting(Problem::code, Problem::place)
          .containsExactlyInAnyOrder(
              tuple("unknown-field", "x"),
              tuple("unknown-field", "person[\"shoe size\"]"),
              tuple("unknown-field", "draws.csf.y"),
              tuple("unknown-field", "draws.urine"),
              tuple("unknown-field", "results[0].z"),
              tuple("unknown-analyte", "results[0].analyte"),
              tuple("unknown-field", "bands.q"),
              tuple("unknown-field", "context.w"));
      assertThat(understood.document().toString())
          .contains("shoe size", "urine", "furlong", "1.50", "neopterin");
    }
  }

  @Nested
  class AtTheEnds {

    @Test
    void read_valuesAtTheirEnds_isUnderstood() {
      // The ends are the contract's: 10^9 in the canonical unit (mg/L), 60 bands, 1900 to 2200.
      assertThat(
              understood(
                      """
                      { "workup": 1, "id": "a", "bands": { "csfOnly": 60, "shared": 60 },
                        "draws": { "csf": { "at": "1900-01-01T00:00:00Z" },
                                   "serum": { "at": "2200-12-31T23:59:59Z" } },
                        "results": [ { "analyte": "albumin", "in": "csf", "value": 1e6,
                                       "unit": "g/L" } ] }
                      """)
                  .panel()
                  .results())
          .hasSize(1);
    }
  }

  @Nested
  class NotValid {

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        quoteCharacter = '~',
        value = {
          "{}|MISSING|id",
          "{\"id\":\"\"}|ILL_FORMED|id",
          "{\"id\":\"a b\"}|ILL_FORMED|id",
          "{\"id\":\"../a\"}|ILL_FORMED|id",
          "{\"id\":7}|WRONG_TYPE|id",
          "{\"id\":null}|WRONG_TYPE|id",
          "{\"id\":\"a\",\"workup\":3}|VERSION|workup",
          "{\"id\":\"a\",\"workup\":\"1\"}|WRONG_TYPE|workup",
          "{\"id\":\"a\",\"person\":[]}|WRONG_TYPE|person",
          "{\"id\":\"a\",\"person\":{\"ageYears\":-1}}|NEGATIVE|person.ageYears",
          "{\"id\":\"a\",\"person\":{\"ageYears\":\"34\"}}|WRONG_TYPE|person.ageYears",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"at\":\"2031-03-02\"}}}|NOT_A_TIME|draws.csf.at",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"at\":\"1899-12-31T23:59:59Z\"}}}|TOO_FAR_TIME|draws.csf.at",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"at\":\"2201-01-01T00:00:00Z\"}}}|TOO_FAR_TIME|draws.csf.at",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"volumeMl\":1e10}}}|TOO_LARGE_NUMBER|draws.csf.volumeMl",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"portionMl\":[0,1e10]}}}|TOO_LARGE_NUMBER|draws.csf.portionMl[1]",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"openingPressure\":{\"value\":1e12,\"unit\":\"cm[H2O]\"}}}}|TOO_LARGE_NUMBER|draws.csf.openingPressure.value",
          "{\"id\":\"a\",\"bands\":{\"csfOnly\":61}}|NOT_WHOLE|bands.csfOnly",
          "{\"id\":\"a\",\"bands\":{\"shared\":2000000000}}|NOT_WHOLE|bands.shared",
          "{\"id\":\"a\",\"bands\":{\"serumOnly\":61}}|NOT_WHOLE|bands.serumOnly",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"volumeMl\":-1}}}|NEGATIVE|draws.csf.volumeMl",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"portionMl\":[4,0]}}}|ILL_FORMED|draws.csf.portionMl",
          "{\"id\":\"a\",\"draws\":{\"csf\":{\"portionMl\":[4]}}}|ILL_FORMED|draws.csf.portionMl",
          "{\"id\":\"a\",\"results\":{}}|WRONG_TYPE|results",
          "{\"id\":\"a\",\"results\":[1]}|WRONG_TYPE|results[0]",
          "{\"id\":\"a\",\"context\":{\"pregnancy\":\"maybe\"}}|NOT_A_WORD|context.pregnancy",
          "{\"id\":\"a\",\"context\":{\"pregnancy\":true}}|WRONG_TYPE|context.pregnancy",
          "{\"id\":\"a\",\"context\":{\"pregnancy\":{}}}|MISSING|context.pregnancy.answer",
          "{\"id\":\"a\",\"invented\":\"yes\"}|WRONG_TYPE|invented",
          "{\"id\":\"a\",\"id\":\"b\"}|TWICE|id",
        })
    void read_head_isRefusedAtItsPlace(String text, InputTrouble trouble, String place) {
      assertRefused(text, trouble, place);
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        quoteCharacter = '~',
        value = {
          "\"in\":\"csf\",\"value\":1,\"unit\":\"mg/L\"|MISSING|results[0].analyte",
          "\"analyte\":\"igg\",\"value\":1,\"unit\":\"mg/L\"|MISSING|results[0].in",
          "\"analyte\":\"igg\",\"in\":\"urine\",\"value\":1,\"unit\":\"mg/L\"|NOT_A_WORD|results[0].in",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1|MISSING|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"unit\":\"mg/L\"|NOT_ONE_VALUE|results[0]",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"below\":2,\"unit\":\"mg/L\"|NOT_ONE_VALUE|results[0]",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"below\":0,\"unit\":\"mg/L\"|NOT_POSITIVE|results[0].below",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":-1,\"unit\":\"mg/L\"|NEGATIVE|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"above\":-1,\"unit\":\"mg/L\"|NEGATIVE|results[0].above",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":NaN,\"unit\":\"mg/L\"|NOT_FINITE|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1e400,\"unit\":\"mg/L\"|NOT_FINITE|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1e308,\"unit\":\"g/L\"|TOO_LARGE_NUMBER|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1000001,\"unit\":\"g/L\"|TOO_LARGE_NUMBER|results[0].value",
          "\"analyte\":\"albumin\",\"in\":\"csf\",\"above\":1e306,\"unit\":\"mg/L\"|TOO_LARGE_NUMBER|results[0].above",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"mg/L\",\"cv\":1e10|TOO_LARGE_NUMBER|results[0].cv",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"mg/L\",\"at\":\"+999999999-12-31T00:00:00Z\"|TOO_FAR_TIME|results[0].at",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1e-320,\"unit\":\"ng/L\"|TOO_SMALL|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":null,\"unit\":\"mg/L\"|WRONG_TYPE|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":\"1\",\"unit\":\"mg/L\"|WRONG_TYPE|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"µg/mL\"|UNKNOWN_UNIT|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"\"|UNKNOWN_UNIT|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"G/L\"|OTHER_DIMENSION|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"[IU]/mL\"|OTHER_DIMENSION|results[0].unit",
          "\"analyte\":\"iga\",\"in\":\"csf\",\"value\":1,\"unit\":\"mmol/L\"|OTHER_DIMENSION|results[0].unit",
          "\"analyte\":\"leukocytes\",\"in\":\"csf\",\"value\":1,\"unit\":\"mmol/L\"|OTHER_DIMENSION|results[0].unit",
          "\"analyte\":\"leukocytes\",\"in\":\"csf\",\"value\":1,\"unit\":\"[arb'U]/L\"|OTHER_DIMENSION|results[0].unit",
          "\"analyte\":\"glucose\",\"in\":\"csf\",\"value\":1,\"unit\":\"/uL\"|OTHER_DIMENSION|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"mg/L\",\"cv\":-0.1|NEGATIVE|results[0].cv",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"mg/L\",\"at\":\"today\"|NOT_A_TIME|results[0].at",
          "\"analyte\":\"novel\",\"in\":\"csf\",\"value\":-1,\"unit\":\"?\"|NEGATIVE|results[0].value",
        })
    void read_result_isRefusedAtItsPlace(String fields, InputTrouble trouble, String place) {
      assertRefused(withResults("{" + fields + "}"), trouble, place);
    }

    @ParameterizedTest
    @ValueSource(strings = {"albumin", "never-heard-of"})
    void read_sameAnalyteTwice_isRefusedAtTheSecond(String analyte) {
      String one =
          "{\"analyte\":\"%s\",\"in\":\"csf\",\"value\":1,\"unit\":\"mg/L\"}".formatted(analyte);
      assertRefused(withResults(one + "," + one), InputTrouble.RESULT_TWICE, "results[1]");
    }

    @ParameterizedTest
    @CsvSource({
      "[IU]/mL, mg/L",
      "mg/L, [IU]/mL",
      "[IU]/mL, [arb'U]/mL",
      "[arb'U]/mL, {AU}/mL",
      "mmol/L, mg/L"
    })
    void read_antibodyInTwoKindsOfUnit_isRefusedAtTheSecond(String csf, String serum) {
      assertRefused(
          antibody(csf, serum), InputTrouble.OTHER_DIMENSION_THAN_PAIR, "results[1].unit");
    }

    @ParameterizedTest
    @CsvSource({"[IU]/mL, [iU]/L", "mg/L, g/dL", "[arb'U]/mL, [arb'U]/L", "{ratio}, 1"})
    void read_antibodyInOneKindOfUnit_isUnderstood(String csf, String serum) {
      assertThat(refused(antibody(csf, serum))).isEmpty();
    }

    @Test
    void read_antibodyInNoUnit_isRefused() {
      assertRefused(antibody("IU/mL", "[IU]/mL"), InputTrouble.UNKNOWN_UNIT, "results[0].unit");
      assertRefused(antibody("[IU]/mL", "IU/mL"), InputTrouble.UNKNOWN_UNIT, "results[1].unit");
    }

    private static String antibody(String csf, String serum) {
      String one = "{\"analyte\":\"rubella-igg\",\"in\":\"%s\",\"value\":1,\"unit\":\"%s\"}";
      return withResults(one.formatted("csf", csf) + "," + one.formatted("serum", serum));
    }

    @ParameterizedTest
    @CsvSource({
      "µg/mL, igg, ug/mL",
      "G/L, igg, g/L",
      "G/L, leukocytes, 10*9/L",
      "MG/DL, igg, mg/dL",
      "cells/µL, leukocytes, {cells}/uL",
      "mcg/mL, igg, ug/mL",
      "IU/mL, measles-igg, [IU]/mL",
    })
    void read_miswrittenUnit_suggestsTheRightOne(String unit, String analyte, String meant) {
      String result =
          "{\"analyte\":\"%s\",\"in\":\"csf\",\"value\":1,\"unit\":\"%s\"}"
              .formatted(analyte, unit);
      assertThat(refused(withResults(result)).getFirst().text())
          .contains("“" + unit + "”", "Perhaps “" + meant + "” is meant.");
    }

    @Test
    void read_manyProblems_areAllNamed() {
      String text =
          """
          {"workup":3,"person":{"ageYears":-2},"draws":{"csf":{"at":"x","openingPressure":
           {"value":-1,"unit":"mg/L"}}},"results":[{"analyte":"igg","in":"csf","value":-1,
           "unit":"mmHg"},{"in":"csf","unit":"mg/L"}],"bands":{"csfOnly":-1,"pattern":9},
           "context":{"pregnancy":"?"}}
          """;
      assertThat(refused(text))
          .extracting(InputProblem::place)
          .containsExactlyInAnyOrder(
              "workup",
              "id",
              "person.ageYears",
              "draws.csf.at",
              "draws.csf.openingPressure.value",
              "draws.csf.openingPressure.unit",
              "results[0].value",
              "results[0].unit",
              "results[1].analyte",
              "results[1]",
              "bands.csfOnly",
              "bands.pattern",
              "context.pregnancy");
    }
  }

  @Nested
  class Bands {

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        quoteCharacter = '~',
        value = {
          "{\"csfOnly\":-1}|NEGATIVE|bands.csfOnly",
          "{\"csfOnly\":2.5}|NOT_WHOLE|bands.csfOnly",
          "{\"shared\":\"2\"}|WRONG_TYPE|bands.shared",
          "{\"pattern\":0}|ILL_FORMED|bands.pattern",
          "{\"pattern\":6}|ILL_FORMED|bands.pattern",
          "{\"pattern\":2.5}|NOT_WHOLE|bands.pattern",
          "{\"result\":\"weakly\"}|NOT_A_WORD|bands.result",
          "{\"gel\":\"g.png\",\"confirmedBy\":\" \"}|BLANK|bands.confirmedBy",
          "[]|WRONG_TYPE|bands",
          "null|WRONG_TYPE|bands",
        })
    void read_wrongBands_areRefused(String bands, InputTrouble trouble, String place) {
      assertRefused(withBands(bands), trouble, place);
    }

    @Test
    void read_counts_winOverPatternAndResult() {
      Workup workup =
          understood(withBands("{\"csfOnly\":3,\"pattern\":1,\"result\":\"negative\"}"));
      BandReport.Counted counted = (BandReport.Counted) workup.bands();
      assertThat(counted.counts().csfOnly()).hasValue(3);
      assertThat(counted.pattern()).contains(BandPattern.NORMAL);
      assertThat(workup.problems())
          .extracting(Problem::code, Problem::place)
          .containsExactly(tuple("band-statement-not-used", "bands.result"));
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "{\"csfOnly\":3,\"result\":\"positive\"}",
          "{\"csfOnly\":1,\"result\":\"negative\"}",
          "{\"pattern\":3,\"result\":\"positive\"}",
          "{\"result\":\"negative\"}"
        })
    void read_resultThatAgrees_isNoProblem(String bands) {
      assertThat(understood(withBands(bands)).problems()).isEmpty();
    }

    @Test
    void read_patternOrResultAlone_isTaken() {
      assertThat(understood(withBands("{\"pattern\":5}")).bands())
          .isEqualTo(new BandReport.Patterned(BandPattern.LADDER, BandReport.Origin.UNKNOWN));
      assertThat(understood(withBands("{\"result\":\"positive\"}")).bands())
          .isEqualTo(new BandReport.Concluded(true, BandReport.Origin.UNKNOWN));
      assertThat(understood(withBands("{\"method\":\"IEF\"}")).bands())
          .isEqualTo(new BandReport.NotReported());
    }

    @Test
    void read_picture_isNamedWithItsLanes() {
      BandReport named =
          understood(
                  withBands(
                      "{\"gel\":\"g.png\",\"lanes\":[\"csf\",\"serum\"],\"confirmedBy\":\"Dr"
                          + " Moss\"}"))
              .bands();
      assertThat(named)
          .isEqualTo(
              new BandReport.GelNamed(
                  "g.png", List.of("csf", "serum"), 0, Optional.of("Dr Moss"), Optional.empty()));
      BandReport.GelNamed edited =
          (BandReport.GelNamed)
              understood(withBands("{\"gel\":\"g.png\",\"lanes\":\"csf,serum\",\"csfOnly\":2}"))
                  .bands();
      assertThat(edited.edit().orElseThrow().counts().csfOnly()).hasValue(2);
      assertThat(edited.lanes()).containsExactly("csf", "serum");
    }

    @Test
    void read_patternBesideOnlyAPicture_isShownAsNotUsed() {
      assertThat(
              understood(withBands("{\"gel\":\"g.png\",\"pattern\":2,\"result\":\"positive\"}"))
                  .problems())
          .extracting(Problem::code, Problem::place)
          .containsExactly(
              tuple("band-statement-not-used", "bands.pattern"),
              tuple("band-statement-not-used", "bands.result"));
    }
  }
}
