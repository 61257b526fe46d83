package cistern.clinic.form;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bedside.Sign;
import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonDocument;
import cistern.exchange.json.JsonText;
import cistern.fact.Facts;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is typed, in the work-up file and back. */
class TypingTest {

  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  private static Json.Structure file(String json) {
    return JsonDocument.read(
            new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)),
            InputLimits.of(Facts.standard()),
            new InputProblems())
        .orElseThrow();
  }

  private static String applied(CaseStep step, String json, Map<String, String> typed) {
    Json.Structure file = file(json);
    return JsonText.of(Typing.of(step, typed, ZONE).applied(file, file)).replaceAll("\\s", "");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "204 mg/L     | `\"value\":204,\"unit\":\"mg/L\"`",
        "<0.3 mg/L    | `\"below\":0.3,\"unit\":\"mg/L\"`",
        "> 12.50 g/L  | `\"above\":12.50,\"unit\":\"g/L\"`",
        "20,4 mg/dL   | `\"value\":\"20,4\",\"unit\":\"mg/dL\"`",
        "7            | `\"value\":7`",
        "some mg/L    | `\"value\":\"some\",\"unit\":\"mg/L\"`"
      })
  void result_asItIsPrinted_keepsItsDigitsAndGuessesNothing(String typed, String expected) {
    assertThat(applied(CaseStep.RESULTS, "{\"results\":[]}", Map.of("albumin.csf", typed.strip())))
        .isEqualTo("{\"results\":[{\"analyte\":\"albumin\",\"in\":\"csf\"," + expected + "}]}");
  }

  @Test
  void result_changed_keepsWhatBelongsToIt() {
    String file =
        "{\"results\":[{\"analyte\":\"albumin\",\"in\":\"csf\",\"below\":5,\"unit\":\"mg/L\","
            + "\"cv\":0.03},{\"analyte\":\"igg\",\"in\":\"csf\",\"value\":1,\"unit\":\"mg/L\"}]}";

    assertThat(applied(CaseStep.RESULTS, file, Map.of("albumin.csf", "6 mg/L")))
        .contains("\"cv\":0.03")
        .contains("\"value\":6")
        .doesNotContain("below")
        .contains("\"analyte\":\"igg\"");
    assertThat(applied(CaseStep.RESULTS, file, Map.of("albumin.csf", "")))
        .doesNotContain("albumin")
        .contains("igg");
    assertThat(applied(CaseStep.RESULTS, file, Map.of("albumin.csf", "<5 mg/L"))).isEqualTo(file);
  }

  @Test
  void time_typedInTheClinicsTime_bearsItsOffset() {
    String file = "{\"draws\":{\"csf\":{\"at\":\"2034-05-09T08:10:00Z\"}}}";

    assertThat(applied(CaseStep.DRAW, file, Map.of("draws.csf.at", "2034-05-09T10:10")))
        .isEqualTo(file);
    assertThat(applied(CaseStep.DRAW, file, Map.of("draws.csf.at", "2034-01-09T10:10")))
        .contains("2034-01-09T10:10+01:00");
    assertThat(applied(CaseStep.DRAW, file, Map.of("draws.csf.at", "tomorrow")))
        .contains("tomorrow");
    assertThat(applied(CaseStep.DRAW, file, Map.of("draws.csf.at", ""))).isEqualTo("{}");
  }

  @Test
  void list_emptiedAtItsFirst_movesUpAndKeepsTheOthers() {
    String file =
        "{\"procedure\":{\"before\":{\"antithrombotics\":["
            + "{\"drug\":\"aspirin\",\"doseClass\":\"low\"},{\"drug\":\"apixaban\"}]}}}";
    String path = "procedure.before.antithrombotics";

    String changed =
        applied(
            CaseStep.PLAN,
            file,
            Map.of(
                path + "[0].drug", "",
                path + "[0].doseClass", "",
                path + "[1].doseClass", "high",
                path + "[2].drug", "heparin"));

    assertThat(changed)
        .isEqualTo(
            "{\"procedure\":{\"before\":{\"antithrombotics\":["
                + "{\"drug\":\"apixaban\",\"doseClass\":\"high\"},{\"drug\":\"heparin\"}]}}}");
  }

  @Test
  void list_thatSaysNothingIsTaken_stays() {
    String file =
        "{\"procedure\":{\"before\":{\"antithrombotics\":[],\"needle\":{\"gauge\":22}}},"
            + "\"a\":null,\"b\":true,\"c\":[1,{}]}";

    assertThat(applied(CaseStep.PLAN, file, Map.of("procedure.before.needle.gauge", "")))
        .contains("\"antithrombotics\":[]")
        .doesNotContain("needle")
        .contains("\"b\":true");
  }

  @Test
  void field_ofAFileThatHoldsSomethingElse_isShownAndKept() {
    Json.Structure file =
        file(
            "{\"question\":{\"x\":1},\"person\":[1],\"evidence\":{\"attacks\":{\"atLeast\":1},"
                + "\"presentation\":\"other\",\"noBetterExplanation\":true,\"vascularRisk\":null}}");
    Typing nothing = Typing.none(CaseStep.QUESTION, ZONE);

    assertThat(nothing.isUnchanged(file)).isTrue();
    assertThat(nothing.applied(file, file)).isEqualTo(file);
    nothing
        .fields()
        .forEach(
            field ->
                assertThat(field.toControl(nothing.shown(field, file)).toText())
                    .contains("name=\"" + field.key() + "\""));
    assertThat(nothing.held(field(nothing, "evidence.presentation"), file)).isEqualTo("other");
    assertThat(nothing.held(field(nothing, "person.ageYears"), file)).isEmpty();
  }

  private static Typable field(Typing typing, String key) {
    return typing.fields().stream().filter(f -> f.key().equals(key)).findFirst().orElseThrow();
  }

  @Test
  void collisions_areThoseFieldsThatBothChangedDifferently() {
    Json.Structure base = file("{\"bands\":{\"csfOnly\":1,\"shared\":1,\"serumOnly\":1}}");
    Json.Structure current = file("{\"bands\":{\"csfOnly\":2,\"shared\":2,\"serumOnly\":3}}");
    Typing mine =
        Typing.of(
            CaseStep.BANDS,
            Map.of("bands.csfOnly", "3", "bands.shared", "2", "bands.serumOnly", "1"),
            ZONE);

    assertThat(mine.collisions(base, current)).containsExactly(Map.entry("bands.csfOnly", "2"));
    assertThat(JsonText.of(mine.applied(base, current)).replaceAll("\\s", ""))
        .isEqualTo("{\"bands\":{\"csfOnly\":3,\"shared\":2,\"serumOnly\":3}}");
  }

  @Test
  void place_ofAProblem_isTheFieldItIsAbout() {
    Json.Structure file = file("{\"results\":[{\"analyte\":\"igg\",\"in\":\"serum\"}]}");

    assertThat(Typing.none(CaseStep.RESULTS, ZONE).at("results[0].unit", file).orElseThrow().key())
        .isEqualTo("igg.serum");
    assertThat(Typing.none(CaseStep.RESULTS, ZONE).at("results[1]", file)).isEmpty();
    assertThat(Typing.none(CaseStep.QUESTION, ZONE).at("person.ageYears", file)).isPresent();
  }

  @Test
  void steps_haveFieldsWithDifferentNames() {
    for (CaseStep step : CaseStep.values()) {
      assertThat(Typing.none(step, ZONE).fields())
          .isNotEmpty()
          .extracting(Typable::key)
          .doesNotHaveDuplicates();
      assertThat(CaseStep.parse(step.word())).contains(step);
    }
    assertThat(CaseStep.parse("none")).isEmpty();
  }

  @Test
  void signs_thatMakeAFindingUrgent_canAllBeTyped() {
    Set<String> keys =
        Typing.none(CaseStep.QUESTION, ZONE).fields().stream()
            .map(Typable::key)
            .collect(Collectors.toSet());

    assertThat(keys)
        .containsAll(Stream.of(Sign.values()).map(s -> "evidence." + s.code()).toList());
  }

  @Test
  void microbeAndAntibody_typedInTheSecondPlace_becomeTheOnlyOnes() {
    assertThat(
            applied(
                CaseStep.RESULTS,
                "{\"workup\":2}",
                Map.of(
                    "microbiology[1].test", "gram",
                    "microbiology[1].result", "positive",
                    "serology[1].test", "aqp4-igg",
                    "serology[1].result", "positive")))
        .contains("\"microbiology\":[{\"test\":\"gram\",\"result\":\"positive\"}]")
        .contains("\"serology\":[{\"test\":\"aqp4-igg\",\"result\":\"positive\"}]");
  }
}
