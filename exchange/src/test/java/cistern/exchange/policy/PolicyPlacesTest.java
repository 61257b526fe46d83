package cistern.exchange.policy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a policy is wrong, place by place; source: the format that the project promises. */
class PolicyPlacesTest {

  private static final Facts STANDARD = Facts.standard();
  private static final PolicyFile FILE = PolicyFile.of(STANDARD);

  private static PolicyReading read(String text) {
    return FILE.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static String policy(String facts) {
    return "{\"policy\":1,\"name\":\"North\",\"facts\":{" + facts + "}}";
  }

  private static Facts changed(String facts) {
    return switch (read(policy(facts))) {
      case PolicyReading.Understood understood -> STANDARD.with(understood.policy());
      case PolicyReading.NotValid notValid -> throw new AssertionError(notValid.problems());
    };
  }

  private static List<InputProblem> refused(String text) {
    return switch (read(text)) {
      case PolicyReading.Understood understood -> List.of();
      case PolicyReading.NotValid notValid -> notValid.problems();
    };
  }

  @Test
  void read_changes_areInForce() {
    Facts facts =
        changed(
            """
            "bands.cut-off":{"value":3,"unit":"1","source":"s"},
            "igg-index.upper":{"value":66,"unit":"%","source":"s"},
            "molar-mass.albumin":{"value":66.437,"unit":"kg/mol","source":"s"},
            "cv.igg.csf":{"value":0,"unit":"1","source":"s"},
            "total-protein.upper":{"value":0.45,"unit":"g/L","source":"s"},
            "igg-synthesis-rate.lower":{"value":-5,"unit":"mg/(24.h)","source":"s"},
            "total-protein.limit-rule":{"value":"by-age","unit":"","source":"s"},
            "albumin-quotient.limit-rule":{"value":"eight-plus-age-over-twenty-five","source":"s"}
            """);
    assertThat(facts.policy()).contains("North");
    assertThat(facts.number("bands.cut-off")).isEqualTo(3);
    assertThat(facts.number("igg-index.upper")).isEqualTo(0.66);
    assertThat(facts.number("molar-mass.albumin")).isEqualTo(66437);
    assertThat(facts.number("cv.igg.csf")).isZero();
    assertThat(facts.number("total-protein.upper")).isEqualTo(450);
    assertThat(facts.number("igg-synthesis-rate.lower")).isEqualTo(-5);
    assertThat(facts.word("total-protein.limit-rule")).isEqualTo("by-age");
    assertThat(facts.word("albumin-quotient.limit-rule"))
        .isEqualTo("eight-plus-age-over-twenty-five");
    assertThat(facts.fact("bands.cut-off").standard()).contains(new FactValue.Figure(2));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "\"no.such\":{\"value\":1,\"unit\":\"1\",\"source\":\"s\"}|UNKNOWN_FACT|facts[\"no.such\"]",
        "\"bands.cut-off\":3|WRONG_TYPE|facts[\"bands.cut-off\"]",
        "\"bands.cut-off\":{\"unit\":\"1\",\"source\":\"s\"}|MISSING|facts[\"bands.cut-off\"].value",
        "\"bands.cut-off\":{\"value\":3,\"source\":\"s\"}|MISSING|facts[\"bands.cut-off\"].unit",
        "\"bands.cut-off\":{\"value\":3,\"unit\":\"1\"}|MISSING|facts[\"bands.cut-off\"].source",
        "\"bands.cut-off\":{\"value\":3,\"unit\":\"1\",\"source\":\""
            + " \"}|BLANK|facts[\"bands.cut-off\"].source",
        "\"bands.cut-off\":{\"value\":2.5,\"unit\":\"1\",\"source\":\"s\"}|NOT_WHOLE|facts[\"bands.cut-off\"].value",
        "\"bands.cut-off\":{\"value\":0,\"unit\":\"1\",\"source\":\"s\"}|NOT_POSITIVE|facts[\"bands.cut-off\"].value",
        "\"bands.cut-off\":{\"value\":3,\"unit\":\"mg/L\",\"source\":\"s\"}|OTHER_DIMENSION|facts[\"bands.cut-off\"].unit",
        "\"bands.cut-off\":{\"value\":\"3\",\"unit\":\"1\",\"source\":\"s\"}|WRONG_TYPE|facts[\"bands.cut-off\"].value",
        "\"molar-mass.igg\":{\"value\":0,\"unit\":\"g/mol\",\"source\":\"s\"}|NOT_POSITIVE|facts[\"molar-mass.igg\"].value",
        "\"molar-mass.igg\":{\"value\":150,\"unit\":\"kDa\",\"source\":\"s\"}|UNKNOWN_UNIT|facts[\"molar-mass.igg\"].unit",
        "\"cv.igg.csf\":{\"value\":-0.1,\"unit\":\"1\",\"source\":\"s\"}|NEGATIVE|facts[\"cv.igg.csf\"].value",
        "\"igg-index.upper\":{\"value\":1e999,\"unit\":\"1\",\"source\":\"s\"}|NOT_FINITE|facts[\"igg-index.upper\"].value",
        "\"total-protein.upper\":{\"value\":1e308,\"unit\":\"g/L\",\"source\":\"s\"}|OVERFLOW|facts[\"total-protein.upper\"].value",
        "\"total-protein.limit-rule\":{\"value\":\"none\",\"source\":\"s\"}|NOT_A_WORD|facts[\"total-protein.limit-rule\"].value",
        "\"igg-index.formula\":{\"value\":\"x\",\"source\":\"s\"}|FIXED_FACT|facts[\"igg-index.formula\"]",
        "\"input.depth\":{\"value\":9,\"unit\":\"1\",\"source\":\"s\"}|FIXED_FACT|facts[\"input.depth\"]",
      })
  void read_wrongChange_isRefusedAtItsPlace(String facts, InputTrouble trouble, String place) {
    assertThat(refused(policy(facts)))
        .extracting(InputProblem::trouble, InputProblem::place)
        .containsExactly(tuple(trouble, place));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "{\"policy\":1,\"facts\":{}}|MISSING|name",
        "{\"policy\":1,\"name\":\" \",\"facts\":{}}|BLANK|name",
        "{\"policy\":1,\"name\":\"x\"}|MISSING|facts",
        "{\"policy\":2,\"name\":\"x\",\"facts\":{}}|VERSION|policy",
        "{\"policy\":1,\"name\":\"x\",\"facts\":[]}|WRONG_TYPE|facts",
        "[]|NOT_AN_OBJECT|''",
      })
  void read_wrongHead_isRefused(String text, InputTrouble trouble, String place) {
    assertThat(refused(text))
        .extracting(InputProblem::trouble, InputProblem::place)
        .containsExactly(tuple(trouble, place.replace("'", "")));
  }

  @Test
  void read_unknownField_isRefused() {
    assertThat(refused("{\"policy\":1,\"name\":\"x\",\"facts\":{},\"by\":\"me\"}"))
        .extracting(InputProblem::trouble, InputProblem::place)
        .containsExactly(tuple(InputTrouble.UNKNOWN_FIELD, "by"));
  }

  @Test
  void read_missingFile_isRefused(@TempDir Path folder) {
    assertThat(FILE.read(folder.resolve("none.json"))).isInstanceOf(PolicyReading.NotValid.class);
  }

  @Test
  void facts_everyNumber_hasAUnitThatPolicyCanUse() {
    Conversions conversions = Conversions.of(STANDARD);
    assertThat(STANDARD.all())
        .filteredOn(fact -> fact.value() instanceof FactValue.Figure)
        .filteredOn(f -> !(conversions.conversion(f.unit(), f.unit()) instanceof Conversion.By))
        .extracting(Fact::key)
        .isEmpty();
  }
}
