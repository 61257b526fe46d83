package cistern.exchange.workup;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.criteria.Count;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.Json;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The work-up file; source: the format that the project promises. */
class WorkupFileTest {

  private static final WorkupFile FILE = WorkupFile.of(Facts.standard());

  private static final String WHOLE =
      """
      { "workup": 1, "id": "example-1", "invented": true, "question": "why?",
        "person": { "id": "p-7", "ageYears": 34.5, "sex": "female" },
        "draws": { "csf": { "at": "2031-03-02T10:15:00Z", "receivedAt": "2031-03-02T10:40:00Z",
                            "appearance": "clear", "site": "lumbar", "volumeMl": 12,
                            "portionMl": [0, 4], "openingPressure": { "value": 17, "unit": "cm[H2O]" } },
                   "serum": { "at": "2031-03-02T11:00:00+01:00" } },
        "results": [
          { "analyte": "albumin", "in": "csf", "value": 220, "unit": "mg/L", "cv": 0.03, "assay": "a",
            "at": "2031-03-02T12:00:00Z", "status": "final", "reportedLimit": "x" },
          { "analyte": "albumin", "in": "serum", "value": 42, "unit": "g/L" },
          { "analyte": "igg", "in": "csf", "value": 6.2, "unit": "mg/dL" },
          { "analyte": "kappa-flc", "in": "csf", "below": 0.3, "unit": "mg/L" },
          { "analyte": "lactate", "in": "csf", "above": 20, "unit": "mmol/L" },
          { "analyte": "hematocrit", "in": "blood", "value": 41, "unit": "%" } ],
        "bands": { "csfOnly": 6, "shared": 0, "serumOnly": 0, "method": "IEF", "readBy": "lab" },
        "serology": [ { "test": "mog-igg", "in": "serum", "result": "negative" } ],
        "context": { "plasmaExchange": "no", "immunoglobulinInfusion": "yes" },
        "evidence": { "presentation": "attack", "attacks": 1, "objectiveLesions": { "atLeast": 1 },
          "noBetterExplanation": "yes",
          "regions": { "periventricular": "yes", "spinalCord": "no" }, "prior": { "ms": [0.3, 0.6] } } }
      """;

  @Nested
  class Valid {

    @Test
    void read_aWholeFile_understandsAllOfIt() {
      Workup workup = understood(WHOLE);

      assertThat(workup.id()).isEqualTo("example-1");
      assertThat(workup.remarks().isInvented()).isTrue();
      assertThat(workup.panel().person().ageYears()).hasValue(34.5);
      assertThat(value(workup, Sample.csf(Analyte.ALBUMIN))).isEqualTo(exact(220));
      assertThat(value(workup, Sample.serum(Analyte.ALBUMIN))).isEqualTo(exact(42_000));
      assertThat(value(workup, Sample.csf(Analyte.IGG))).isEqualTo(exact(62));
      assertThat(value(workup, Sample.csf(Analyte.KAPPA))).isEqualTo(Interval.below(0.3));
      assertThat(value(workup, Sample.csf(Analyte.LACTATE))).isEqualTo(Interval.above(20));
      assertThat(value(workup, Sample.blood(Analyte.HEMATOCRIT))).isEqualTo(exact(0.41));
      assertThat(workup.panel().find(Sample.csf(Analyte.ALBUMIN)).orElseThrow().cv())
          .hasValue(0.03);
      assertThat(workup.panel().answer(Circumstance.IMMUNOGLOBULIN_INFUSION)).isEqualTo(Answer.YES);
      assertThat(workup.clinical().evidence().presentation()).isEqualTo(Presentation.ATTACK);
      assertThat(workup.clinical().evidence().attacks()).isEqualTo(Count.of(1));
      assertThat(workup.clinical().evidence().objectiveLesions()).isEqualTo(Count.atLeast(1));
      assertThat(workup.clinical().evidence().answer(Item.PERIVENTRICULAR)).isEqualTo(Answer.YES);
      assertThat(workup.clinical().evidence().answer(Item.OPTIC_NERVE)).isEqualTo(Answer.UNKNOWN);
      assertThat(workup.problems()).isEmpty();
    }

    @Test
    void read_theSmallestFile_isValid() {
      Workup workup = understood("{\"workup\":1,\"id\":\"a\"}");

      assertThat(workup.panel().results()).isEmpty();
      assertThat(workup.bands()).isInstanceOf(BandReport.NotReported.class);
    }

    @Test
    void read_unknownFieldsAndAnalytes_keepsThemAndSaysSo() {
      String text =
          """
          { "workup": 1, "id": "a", "mood": "good", "person": { "height": 3 },
            "results": [ { "analyte": "unobtainium", "in": "csf", "value": 3, "unit": "any" } ] }
          """;
      Workup workup = understood(text);

      assertThat(workup.problems().stream().map(Problem::code))
          .containsExactlyInAnyOrder("unknown-field", "unknown-field", "unknown-analyte");
      assertThat(workup.problems().stream().map(Problem::place))
          .contains("mood", "person.height", "results[0].analyte");
      assertThat(workup.problems()).allSatisfy(p -> assertThat(p.text()).contains("kept"));
      Json.Structure document = ((WorkupReading.Understood) read(text)).document();
      assertThat(document.members()).containsKey("mood");
    }

    @ParameterizedTest
    @CsvSource({
      "albumin, serum, 601.5037593984962, umol/L, 40000",
      "igg, csf, 200, nmol/L, 30",
      "glucose, csf, 60, mg/dL, 3.330446945979983",
      "glucose, csf, 5, mmol/L, 5",
      "lactate, csf, 18, mg/dL, 1.9982238010657194",
      "total-protein, csf, 0.5, g/L, 500",
      "leukocytes, csf, 5, 10*6/L, 5",
      "leukocytes, csf, 5, {cells}/uL, 5",
      "leukocytes, csf, 5, /mm3, 5",
      "myelin-basic-protein, csf, 4, ug/L, 4",
      "neutrophils, csf, 71, %, 0.71",
      "igm, csf, 1000, ng/mL, 1"
    })
    void read_anyUnitOfTheDimension_convertsExactly(
        String analyte, String in, String value, String unit, double expected) {
      Workup workup = understood(result(analyte, in, value, unit));

      Interval read = workup.panel().results().firstEntry().getValue().value();
      assertThat(read.exactly())
          .isCloseTo(expected, org.assertj.core.api.Assertions.within(expected * 1e-12));
    }

    @Test
    void read_specificAntibody_inOneKindOfUnit() {
      Workup workup =
          understood(
              """
              { "workup": 1, "id": "a", "results": [
                { "analyte": "measles-igg", "in": "csf", "value": 20, "unit": "[iU]/L" },
                { "analyte": "measles-igg", "in": "serum", "value": 3, "unit": "[iU]/mL" } ] }
              """);

      assertThat(value(workup, Sample.csf(Analyte.MEASLES_IGG))).isEqualTo(exact(20));
      assertThat(value(workup, Sample.serum(Analyte.MEASLES_IGG))).isEqualTo(exact(3000));
    }

    @ParameterizedTest
    @CsvSource({"1, NORMAL", "5, LADDER"})
    void read_aPattern_isOne(int number, BandPattern pattern) {
      assertThat(
              understood("{\"workup\":1,\"id\":\"a\",\"bands\":{\"pattern\":%d}}".formatted(number))
                  .bands())
          .isEqualTo(new BandReport.Patterned(pattern, BandReport.Origin.UNKNOWN));
    }

    @Test
    void read_resultsAndGels_areTheirOwnReports() {
      assertThat(
              understood("{\"workup\":1,\"id\":\"a\",\"bands\":{\"result\":\"positive\"}}").bands())
          .isEqualTo(new BandReport.Concluded(true, BandReport.Origin.UNKNOWN));
      BandReport gel =
          understood(
                  """
                  { "workup": 1, "id": "a", "bands": { "gel": "g.png", "lanes": ["csf", "serum"],
                    "pair": 1, "confirmedBy": "a reader", "csfOnly": 3 } }
                  """)
              .bands();
      assertThat(gel).isInstanceOf(BandReport.GelNamed.class);
      BandReport.GelNamed named = (BandReport.GelNamed) gel;
      assertThat(named.lanes()).containsExactly("csf", "serum");
      assertThat(named.pair()).isEqualTo(1);
      assertThat(named.confirmedBy()).contains("a reader");
      assertThat(named.edit()).isPresent();
    }

    @Test
    void read_lanesWithPlaces_areNamedWithThem() {
      BandReport gel =
          understood(
                  """
                  { "workup": 1, "id": "a", "bands": { "gel": "g.png", "lanes": [
                    { "kind": "csf", "pair": 1, "xCentre": 130.25, "width": 62 },
                    { "kind": "control", "xCentre": 0, "width": 6e1 } ] } }
                  """)
              .bands();
      assertThat(((BandReport.GelNamed) gel).lanes())
          .containsExactly("csf:1@130.25/62", "control@0/60");
    }
  }

  @Nested
  class NotValid {

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "{}|id",
          "{\"workup\":3,\"id\":\"a\"}|workup",
          "{\"workup\":1,\"id\":\"a b\"}|id",
          "{\"workup\":1,\"id\":7}|id",
          "{\"workup\":1,\"id\":\"a\",\"id\":\"b\"}|id",
          "{\"workup\":1,\"id\":\"a\",\"person\":{\"ageYears\":-1}}|person.ageYears",
          "{\"workup\":1,\"id\":\"a\",\"person\":[]}|person",
          "{\"workup\":1,\"id\":\"a\",\"draws\":{\"csf\":{\"at\":\"2031-03-02T10:15:00\"}}}|draws.csf.at",
          "{\"workup\":1,\"id\":\"a\",\"context\":{\"pregnancy\":\"maybe\"}}|context.pregnancy",
          "{\"workup\":1,\"id\":\"a\",\"bands\":{\"pattern\":6}}|bands.pattern",
          "{\"workup\":1,\"id\":\"a\",\"bands\":{\"csfOnly\":1.5}}|bands.csfOnly",
          "{\"workup\":1,\"id\":\"a\",\"bands\":{\"csfOnly\":-1}}|bands.csfOnly",
          "{\"workup\":1,\"id\":\"a\",\"bands\":{\"result\":\"perhaps\"}}|bands.result",
          "{\"workup\":1,\"id\":\"a\",\"bands\":{\"gel\":\"g.png\",\"confirmedBy\":\""
              + " \"}}|bands.confirmedBy",
          "{\"workup\":1,\"id\":\"a\",\"evidence\":{\"attacks\":\"many\"}}|evidence.attacks",
          "{\"workup\":1,\"id\":\"a\",\"evidence\":{\"attacks\":true}}|evidence.attacks",
          "{\"workup\":1,\"id\":\"a\",\"evidence\":{\"attacks\":{}}}|evidence.attacks.atLeast",
          "{\"workup\":1,\"id\":\"a\",\"evidence\":{\"presentation\":\"odd\"}}|evidence.presentation",
          "{\"workup\":1,\"id\":\"a\",\"results\":{}}|results",
          "{\"workup\":1,\"id\":\"a\",\"results\":[3]}|results[0]"
        })
    void read_whatIsWrong_isNamedWithItsPlace(String text, String places) {
      assertThat(places(text)).containsExactlyInAnyOrder(places.split(",", -1));
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\"|results[0].analyte",
          "\"analyte\":\"igg\",\"value\":3,\"unit\":\"mg/L\"|results[0].in",
          "\"analyte\":\"igg\",\"in\":\"tears\",\"value\":3,\"unit\":\"mg/L\"|results[0].in",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"unit\":\"mg/L\"|results[0]",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"below\":3,\"unit\":\"mg/L\"|results[0]",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":\"3\",\"unit\":\"mg/L\"|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":null,\"unit\":\"mg/L\"|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":-3,\"unit\":\"mg/L\"|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"below\":0,\"unit\":\"mg/L\"|results[0].below",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1e400,\"unit\":\"mg/L\"|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1e307,\"unit\":\"kg/L\"|results[0].value",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"µg/mL\"|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/24h\"|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/24.h\"|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"G/L\"|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"[iU]/mL\"|results[0].unit",
          "\"analyte\":\"igm\",\"in\":\"csf\",\"value\":3,\"unit\":\"umol/L\"|results[0].unit",
          "\"analyte\":\"leukocytes\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\"|results[0].unit",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\",\"cv\":-1|results[0].cv",
          "\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\",\"at\":\"today\"|results[0].at"
        })
    void read_aWrongResult_isNamedWithItsPlace(String fields, String place) {
      assertThat(places("{\"workup\":1,\"id\":\"a\",\"results\":[{%s}]}".formatted(fields)))
          .containsExactly(place);
    }

    @Test
    void read_theSameSampleTwice_namesTheSecond() {
      String one = "{\"analyte\":\"igg\",\"in\":\"csf\",\"value\":3,\"unit\":\"mg/L\"}";
      String text = "{\"workup\":1,\"id\":\"a\",\"results\":[%s,%s]}".formatted(one, one);

      assertThat(places(text)).containsExactly("results[1]");
    }

    @Test
    void read_antibodiesInUnitsThatDoNotCompare_areRefused() {
      String text =
          """
          { "workup": 1, "id": "a", "results": [
            { "analyte": "measles-igg", "in": "csf", "value": 20, "unit": "mg/L" },
            { "analyte": "measles-igg", "in": "serum", "value": 3, "unit": "[iU]/mL" } ] }
          """;

      assertThat(places(text)).containsExactly("results[1].unit");
    }

    @Test
    void read_manyProblems_saysAllOfThem() {
      String text =
          """
          { "workup": 1, "id": "a b", "person": { "ageYears": "old" }, "results": [
            { "analyte": "igg", "in": "csf", "value": -1, "unit": "mg/L" },
            { "analyte": "iga", "in": "csf", "value": 1, "unit": "furlong" } ] }
          """;

      assertThat(places(text))
          .containsExactlyInAnyOrder(
              "id", "person.ageYears", "results[0].value", "results[1].unit");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[", "nonsense", "[]", "3", "{\"workup\":1,\"id\":\"a\"} more"})
    void read_whatIsNoObject_isNotValid(String text) {
      assertThat(problems(text)).isNotEmpty();
    }
  }

  @Nested
  class Hostile {

    @Test
    void read_mutatedFiles_isAlwaysEitherUnderstoodOrRefusedWithReasons() {
      Random draw = new Random(471_300);
      String digits = "4713";
      String text = WHOLE.replace("220", digits);
      for (int i = 0; i < 3_000; i++) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        for (int k = 0; k <= draw.nextInt(4); k++) {
          bytes[draw.nextInt(bytes.length)] = (byte) draw.nextInt(256);
        }
        switch (FILE.read(new ByteArrayInputStream(bytes))) {
          case WorkupReading.Understood understood ->
              assertThat(understood.workup().id()).isNotEmpty();
          case WorkupReading.NotValid notValid -> {
            assertThat(notValid.problems()).isNotEmpty();
            assertThat(notValid.problems())
                .allSatisfy(p -> assertThat(p.toText()).isNotBlank().doesNotContain(digits));
          }
        }
      }
    }

    @Test
    void read_deepAndLongFiles_isRefused() {
      String deep = "{\"workup\":1,\"id\":\"a\",\"x\":" + "[".repeat(5_000);
      String digits =
          "{\"workup\":1,\"id\":\"a\",\"person\":{\"ageYears\":" + "1".repeat(5_000) + "}}";

      assertThat(problems(deep)).isNotEmpty();
      assertThat(problems(digits)).isNotEmpty();
    }

    @Test
    void read_otherEncodings_isRefusedInWords() {
      for (var charset :
          List.of(StandardCharsets.UTF_16, StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
        WorkupReading reading = FILE.read(new ByteArrayInputStream(WHOLE.getBytes(charset)));
        assertThat(((WorkupReading.NotValid) reading).problems().getFirst().text())
            .contains("UTF-8");
      }
    }
  }

  private static String result(String analyte, String in, String value, String unit) {
    return "{\"workup\":1,\"id\":\"a\",\"results\":[{\"analyte\":\"%s\",\"in\":\"%s\",\"value\":%s,\"unit\":\"%s\"}]}"
        .formatted(analyte, in, value, unit);
  }

  private static Interval exact(double value) {
    return Interval.of(value);
  }

  private static Interval value(Workup workup, Sample sample) {
    return workup.panel().find(sample).orElseThrow().value();
  }

  private static WorkupReading read(String text) {
    return FILE.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static Workup understood(String text) {
    return switch (read(text)) {
      case WorkupReading.Understood understood -> understood.workup();
      case WorkupReading.NotValid notValid -> throw new AssertionError(notValid.problems());
    };
  }

  private static List<InputProblem> problems(String text) {
    return switch (read(text)) {
      case WorkupReading.Understood understood -> List.of();
      case WorkupReading.NotValid notValid -> notValid.problems();
    };
  }

  private static List<String> places(String text) {
    return problems(text).stream().map(InputProblem::place).toList();
  }
}
