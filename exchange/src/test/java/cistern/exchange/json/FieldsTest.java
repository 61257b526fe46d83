package cistern.exchange.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FieldsTest {

  private static final InputLimits LIMITS = InputLimits.of(Facts.standard());

  private final InputProblems problems = new InputProblems();

  private Fields fields(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    Json.Structure root =
        JsonDocument.read(new ByteArrayInputStream(bytes), LIMITS, problems).orElseThrow();
    return Fields.of(root, LIMITS, problems);
  }

  private void refused(InputTrouble trouble, String place) {
    assertThat(problems.invalid())
        .extracting(InputProblem::trouble, InputProblem::place)
        .containsExactly(tuple(trouble, place));
  }

  @Test
  void everyType_given_isRead() {
    Fields f =
        fields(
            """
            {"t":"x","b":true,"n":1.5,"c":3,"a":"no","in":"csf","at":"2031-03-02T10:15:00+01:00",
             "o":{"x":1},"l":[{"x":1},{"x":2}],"ts":["a","b"],"ns":[0,4]}
            """);
    assertThat(f.text("t")).contains("x");
    assertThat(f.truth("b")).contains(true);
    assertThat(f.number("n", NumberRange.ANY)).isEqualTo(OptionalDouble.of(1.5));
    assertThat(f.count("c")).isEqualTo(OptionalInt.of(3));
    assertThat(f.answer("a")).isEqualTo(Answer.NO);
    assertThat(f.word("in", Compartment::parse, List.of("csf"))).contains(Compartment.CSF);
    assertThat(f.time("at")).isPresent();
    assertThat(f.object("o").orElseThrow().count("x")).isEqualTo(OptionalInt.of(1));
    assertThat(f.objects("l")).hasSize(2);
    assertThat(f.objects("l").get(1).place("x").path()).isEqualTo("l[1].x");
    assertThat(f.texts("ts")).containsExactly("a", "b");
    assertThat(f.numbers("ns", NumberRange.NOT_NEGATIVE)).containsExactly(0.0, 4.0);
    f.checkNoOthers();
    assertThat(problems.isValid()).isTrue();
    assertThat(problems.kept()).isEmpty();
  }

  @Test
  void everyType_missing_isEmptyWithoutProblem() {
    Fields f = fields("{}");
    assertThat(f.text("x")).isEmpty();
    assertThat(f.answer("x")).isEqualTo(Answer.UNKNOWN);
    assertThat(f.number("x", NumberRange.ANY)).isEmpty();
    assertThat(f.count("x")).isEmpty();
    assertThat(f.objects("x")).isEmpty();
    assertThat(f.object("x")).isEmpty();
    assertThat(problems.isValid()).isTrue();
  }

  @Test
  void checkGiven_missing_isNoted() {
    fields("{\"a\":null}").checkGiven("a", "b");
    refused(InputTrouble.MISSING, "b");
  }

  @ParameterizedTest
  @ValueSource(strings = {"null", "1", "true", "[]", "{}"})
  void text_otherType_isNoted(String value) {
    assertThat(fields("{\"a\":" + value + "}").text("a")).isEmpty();
    refused(InputTrouble.WRONG_TYPE, "a");
  }

  @ParameterizedTest
  @ValueSource(strings = {"null", "\"1\"", "true", "[]", "{}"})
  void number_otherType_isNoted(String value) {
    assertThat(fields("{\"a\":" + value + "}").number("a", NumberRange.ANY)).isEmpty();
    refused(InputTrouble.WRONG_TYPE, "a");
  }

  @ParameterizedTest
  @CsvSource({
    "1e400, ANY, NOT_FINITE",
    "-1e400, ANY, NOT_FINITE",
    "1e99999999999, ANY, NOT_FINITE",
    "1e-400, ANY, TOO_SMALL",
    "1e-99999999999, ANY, TOO_SMALL",
    "-1, NOT_NEGATIVE, NEGATIVE",
    "0, POSITIVE, NOT_POSITIVE",
    "-2, POSITIVE, NOT_POSITIVE",
    "1.01, FRACTION, NOT_A_FRACTION",
    "-0.01, FRACTION, NOT_A_FRACTION",
  })
  void number_outOfRange_isNoted(String literal, NumberRange sign, InputTrouble trouble) {
    assertThat(fields("{\"a\":" + literal + "}").number("a", sign)).isEmpty();
    refused(trouble, "a");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-0", "-0.0", "0e99999999999", "0.000e-5"})
  void number_zeroHoweverWritten_isZero(String literal) {
    assertThat(fields("{\"a\":" + literal + "}").number("a", NumberRange.NOT_NEGATIVE)).hasValue(0);
  }

  @Test
  void number_thousandsOfDigits_isNoted() {
    assertThat(fields("{\"a\":" + "9".repeat(5000) + "}").number("a", NumberRange.ANY)).isEmpty();
    refused(InputTrouble.TOO_LONG, "a");
  }

  @Test
  void number_notANumber_isNotedOnce() {
    assertThat(fields("{\"a\":NaN}").number("a", NumberRange.ANY)).isEmpty();
    refused(InputTrouble.NOT_FINITE, "a");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.5", "2147483648", "1e300"})
  void count_notWhole_isNoted(String literal) {
    assertThat(fields("{\"a\":" + literal + "}").count("a")).isEmpty();
    refused(InputTrouble.NOT_WHOLE, "a");
  }

  @ParameterizedTest
  @ValueSource(strings = {"2.0", "2", "20e-1"})
  void count_wholeHoweverWritten_isRead(String literal) {
    assertThat(fields("{\"a\":" + literal + "}").count("a")).hasValue(2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Yes", "true", "", "y"})
  void answer_otherWord_isNotedWithTheWords(String word) {
    assertThat(fields("{\"a\":\"" + word + "\"}").answer("a")).isEqualTo(Answer.UNKNOWN);
    refused(InputTrouble.NOT_A_WORD, "a");
    assertThat(problems.invalid().getFirst().text()).contains("yes, no, unknown");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2031-03-02T10:15:00Z",
        "2031-03-02T10:15+01:00",
        "2031-03-02T10:15:00.123-03:30",
        "20310302T101500Z",
        "20310302T1015+0100"
      })
  void time_iso8601WithOffset_isRead(String time) {
    assertThat(fields("{\"a\":\"" + time + "\"}").time("a")).isPresent();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2031-03-02T10:15:00",
        "2031-03-02",
        "2031-03-02 10:15:00Z",
        "02.03.2031 10:15",
        "2031-02-30T10:15:00Z",
        "2031-13-02T10:15:00Z",
        "2031-03-02T25:15:00Z",
        "20310230T101500Z",
        "",
        "soon"
      })
  void time_anythingElse_isNoted(String time) {
    assertThat(fields("{\"a\":\"" + time + "\"}").time("a")).isEmpty();
    refused(InputTrouble.NOT_A_TIME, "a");
  }

  @Test
  void lists_itemsOfOtherType_areNotedAtTheirIndex() {
    Fields f = fields("{\"o\":[{},1],\"t\":[\"a\",null],\"n\":[1,\"2\",-1,NaN],\"x\":{}}");
    assertThat(f.objects("o")).hasSize(1);
    assertThat(f.texts("t")).containsExactly("a");
    assertThat(f.numbers("n", NumberRange.NOT_NEGATIVE)).containsExactly(1.0);
    assertThat(f.objects("x")).isEmpty();
    assertThat(problems.invalid())
        .extracting(InputProblem::place)
        .containsExactly("n[3]", "o[1]", "t[1]", "n[1]", "n[2]", "x");
  }

  @Test
  void checkNoOthers_unknownNames_areKeptAndNamed() {
    Fields f = fields("{\"a\":1,\"b\":2,\"c d\":3,\"e\":4}");
    assertThat(f.isGiven("a")).isTrue();
    assertThat(f.count("a")).hasValue(1);
    f.keep("e");
    f.checkNoOthers();
    assertThat(problems.isValid()).isTrue();
    assertThat(problems.kept())
        .extracting(Problem::code, Problem::place)
        .containsExactly(tuple("unknown-field", "b"), tuple("unknown-field", "[\"c d\"]"));
  }
}
