package cistern.exchange.workup;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bedside.MicrobeTest;
import cistern.bedside.RuleReply;
import cistern.bedside.Sign;
import cistern.bedside.Syndrome;
import cistern.differential.Serology;
import cistern.exchange.workup.WorkupReading.NotValid;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Measurement.Tube;
import cistern.measurement.Sample;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Question;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the second version of the work-up file adds to the first. */
class SecondVersionTest {

  private static final WorkupFile FILE = WorkupFile.of(Facts.standard());

  private static WorkupReading reading(String fields) {
    String whole = "{\"workup\": 2, \"id\": \"w-1\", " + fields + "}";
    return FILE.read(new ByteArrayInputStream(whole.getBytes(StandardCharsets.UTF_8)));
  }

  private static Workup read(String fields) {
    WorkupReading reading = reading(fields);
    assertThat(reading).isInstanceOf(Understood.class);
    return ((Understood) reading).workup();
  }

  @Test
  void read_person_daysWeightAndCreatinine() {
    Workup workup =
        read(
            """
            "person": { "ageDays": 20, "ageYears": 3, "weightKg": 3.4,
              "creatinine": { "value": 1, "unit": "mg/dL", "at": "2031-03-01T08:00:00Z" } }\
            """);

    assertThat(workup.panel().person().days()).isEqualTo(OptionalDouble.of(20));
    assertThat(workup.panel().person().ageYears()).isEqualTo(OptionalDouble.of(20 / 365.25));
    // 1 mg/dL = 88.4 µmol/L: the conversion that the fact is derived from
    assertThat(workup.panel().person().body().creatinine().orElseThrow().micromolPerL())
        .isCloseTo(88.4, org.assertj.core.data.Offset.offset(0.01));
    assertThat(workup.problems()).isEmpty();
  }

  @Test
  void read_yearsAlone_days() {
    assertThat(read("\"person\": {\"ageYears\": 2}").panel().person().days())
        .isEqualTo(OptionalDouble.of(730.5));
  }

  @Test
  void read_everythingOfTheBedside_kept() {
    Workup workup =
        read(
            """
            "evidence": { "fever": "yes", "confusion": "no", "syndromes": ["myelitis"],
              "supportingSigns": ["conus"], "onsetAt": "2031-03-01T08:00:00Z" },
            "microbiology": [ { "test": "pcr", "target": "HSV-1", "in": "csf",
              "result": "pending", "at": "2031-03-01T08:00:00Z" } ],
            "serology": [ { "test": "mog-igg", "result": "positive", "method": "cell-based",
              "titre": "1:1,000" } ],
            "treatments": [ { "drug": "ocrelizumab", "from": "2030-03-01T08:00:00Z" } ],
            "letter": { "to": "Dr Example", "releaseProbability": "yes" },
            "answers": [ { "to": "bacterial-pattern", "by": "Dr Example",
              "at": "2031-03-01T08:00:00Z", "reason": "treated since" } ]\
            """);

    var bedside = workup.clinical().bedside();
    assertThat(bedside.answer(Sign.FEVER)).isEqualTo(Answer.YES);
    assertThat(bedside.answer(Sign.CONFUSION)).isEqualTo(Answer.NO);
    assertThat(bedside.answer(Sign.VISUAL_LOSS)).isEqualTo(Answer.UNKNOWN);
    assertThat(bedside.attack().syndromes()).containsExactly(Syndrome.MYELITIS);
    assertThat(bedside.attack().supportingSigns()).containsExactly("conus");
    assertThat(bedside.attack().onsetAt()).isPresent();
    assertThat(bedside.microbes()).extracting(MicrobeTest::test).containsExactly("pcr");
    assertThat(bedside.treatments()).hasSize(1);
    assertThat(bedside.replies()).allMatch(RuleReply::isComplete);
    Serology mog = workup.clinical().serology().getFirst();
    assertThat(mog.method()).isEqualTo(Serology.Method.CELL_BASED);
    assertThat(mog.dilution()).hasValue(1000);
    assertThat(workup.remarks().letter().to()).contains("Dr Example");
    assertThat(workup.problems()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"evidence\": {\"syndromes\": [\"stroke\"]}",
        "\"evidence\": {\"fever\": \"high\"}",
        "\"microbiology\": [{\"test\": \"pcr\", \"result\": \"unclear\"}]",
        "\"microbiology\": [{\"result\": \"negative\"}]",
        "\"treatments\": [{\"from\": \"2031-03-01T08:00:00Z\"}]",
        "\"answers\": [{\"by\": \"Dr Example\"}]",
        "\"person\": {\"creatinine\": {\"value\": 1, \"unit\": \"mmol\"}}",
        "\"draws\": {\"csf\": {\"position\": \"standing\"}}",
      })
  void read_wrongWordOrMissing_notValid(String fields) {
    assertThat(reading(fields)).isInstanceOf(NotValid.class);
  }

  @Test
  void read_answerWithoutReason_namedAndNotComplete() {
    Workup workup = read("\"answers\": [{\"to\": \"microbe-found\", \"by\": \"Dr Example\"}]");

    assertThat(workup.problems()).extracting(Problem::code).containsExactly("answer-incomplete");
    assertThat(workup.clinical().bedside().replies()).noneMatch(RuleReply::isComplete);
  }

  private static String counted(String analyte, String in, String first, String second) {
    String result = "{\"analyte\": \"%s\", \"in\": \"%s\", \"value\": %d, \"unit\": \"/uL\"%s}";
    return "\"results\": ["
        + result.formatted(analyte, in, 9000, first)
        + ", "
        + result.formatted(analyte, in, 400, second)
        + "]";
  }

  @Test
  void read_twoTubes_lastUsedAndFirstKept() {
    Sample sample = Sample.csf(Analyte.ERYTHROCYTES);
    Workup workup =
        read(counted("erythrocytes", "csf", ", \"tube\": \"first\"", ", \"tube\": \"last\""));

    assertThat(workup.panel().find(sample).orElseThrow().value()).isEqualTo(Interval.of(400));
    assertThat(workup.panel().find(sample).orElseThrow().tube()).isEqualTo(Tube.LAST);
    assertThat(Objects.requireNonNull(workup.panel().firstTube().get(sample)).value())
        .isEqualTo(Interval.of(9000));
  }

  @ParameterizedTest
  @CsvSource({
    "erythrocytes, csf, last, last",
    "erythrocytes, csf, '', last",
    "erythrocytes, csf, last, ''",
    "erythrocytes, blood, first, last",
  })
  void read_twiceOtherwise_notValid(String analyte, String in, String first, String second) {
    String one = first.isEmpty() ? "" : ", \"tube\": \"" + first + "\"";
    String two = second.isEmpty() ? "" : ", \"tube\": \"" + second + "\"";
    assertThat(reading(counted(analyte, in, one, two))).isInstanceOf(NotValid.class);
  }

  @Test
  void read_seizureInEitherPlace_countsInBoth() {
    for (String fields :
        new String[] {
          "\"evidence\": {\"newSeizure\": \"yes\"}",
          "\"procedure\": {\"before\": {\"signs\": {\"newSeizure\": \"yes\"}}}"
        }) {
      Workup workup = read(fields);
      assertThat(workup.clinical().bedside().answer(Sign.NEW_SEIZURE)).isEqualTo(Answer.YES);
      assertThat(workup.procedure().before().answers().isYes(Question.NEW_SEIZURE)).isTrue();
      assertThat(workup.problems()).isEmpty();
    }
  }

  @Test
  void read_twoPlacesDisagree_yesCountsAndNamed() {
    Workup workup =
        read(
            """
            "evidence": {"immunocompromised": "no"},
            "draws": {"csf": {"position": "lateral", "atypicalCells": "no"}},
            "microbiology": [{"test": "culture", "result": "negative"}],
            "procedure": {"before": {"signs": {"immunocompromised": "yes"}},
              "done": {"position": "sitting"},
              "after": {"sent": [{"test": "culture", "positive": "yes"},
                {"test": "cytology", "positive": "yes"}]}}\
            """);

    assertThat(workup.problems())
        .extracting(Problem::code)
        .containsExactly("said-two-ways", "said-two-ways", "said-two-ways", "said-two-ways");
    assertThat(workup.clinical().bedside().answer(Sign.IMMUNOCOMPROMISED)).isEqualTo(Answer.YES);
    assertThat(workup.clinical().bedside().microbes()).anyMatch(MicrobeTest::isPositive);
    assertThat(workup.panel().csf().looked().atypicalCells()).isEqualTo(Answer.YES);
    assertThat(workup.procedure().done().position()).isEqualTo(Position.UNKNOWN);
  }

  @Test
  void read_positionWithTheDraw_countsForTheProcedure() {
    assertThat(
            read("\"draws\": {\"csf\": {\"position\": \"sitting\"}}").procedure().done().position())
        .isEqualTo(Position.SITTING);
  }
}
