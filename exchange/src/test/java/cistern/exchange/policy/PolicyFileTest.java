package cistern.exchange.policy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import cistern.exchange.json.InputProblem;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The policy file; source: the format that the project promises. */
class PolicyFileTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "igg-index.upper|0.66|1|0.66",
        "total-protein.upper|0.6|g/L|600",
        "total-protein.upper|55|mg/dL|550",
        "albumin-quotient.four-plus-age-over-fifteen.base|5|10*-3|5",
        "albumin-quotient.four-plus-age-over-fifteen.base|0.005|1|5",
        "bands.cut-off|3|1|3",
        "pairing.valid-hours|1|d|24",
        "cv.igg.csf|4|%|0.04",
        "molar-mass.igg|146|kg/mol|146000",
        "igg-synthesis-rate.lower|-5|mg/d|-5"
      })
  void read_aKnownFact_isConvertedExactly(String key, String value, String unit, double expected)
      throws IOException {
    Policy policy = understood(fact(key, value, unit, "memo 4"));

    assertThat(policy.changes().get(key))
        .isEqualTo(new Policy.Change(new FactValue.Figure(expected), "memo 4"));
  }

  /** A share of nobody, of everybody or of more has no odds; 85 % is 0.85. */
  @ParameterizedTest
  @CsvSource({
    "probability.share.own, 0, 1",
    "probability.share.own, 1, 1",
    "probability.share.own, 1.2, 1",
    "probability.share.own, 100, %",
    "headache-risk.local.atraumatic, 0, 1",
    "headache-risk.factor.female.share, 1, 1"
  })
  void read_aShareOfNobodyOrEverybody_isRefusedWithItsPlace(String key, String value, String unit)
      throws IOException {
    assertThat(places(fact(key, value, unit, "audit")))
        .containsExactly("facts[\"" + key + "\"].value");
  }

  @Test
  void read_aSpreadOfNothing_isRefused() throws IOException {
    assertThat(places(fact("probability.attack-mri-not-used.log-odds-ratio.spread", "0", "1", "s")))
        .hasSize(1);
  }

  @Test
  void read_aShareInPerCent_isAFraction() throws IOException {
    assertThat(understood(fact("probability.share.own", "85", "%", "audit")).changes())
        .containsValue(new Policy.Change(new FactValue.Figure(0.85), "audit"));
  }

  @Test
  void read_aRule_isOneOfThoseThatExist() throws IOException {
    assertThat(
            understood(
                    "\"albumin-quotient.limit-rule\": { \"value\":"
                        + " \"eight-plus-age-over-twenty-five\", \"source\": \"s\" }")
                .changes())
        .containsKey("albumin-quotient.limit-rule");
    assertThat(
            places(
                "\"albumin-quotient.limit-rule\": { \"value\": \"no-rule\", \"source\": \"s\" }"))
        .containsExactly("facts[\"albumin-quotient.limit-rule\"].value");
    assertThat(places("\"igg-index.formula\": { \"value\": \"x\", \"source\": \"s\" }")).hasSize(1);
  }

  /** The tables are those whose rows stand among the facts, and no other key of the analyte. */
  @Test
  void read_aRuleThatIsATable_isOneOfTheTablesOfItsAnalyte() throws IOException {
    String rule = "\"neurofilament-light.limit-rule\": { \"value\": \"%s\", \"source\": \"s\" }";
    for (String table : List.of("bornhorst-2022", "simren-2022")) {
      assertThat(understood(rule.formatted(table)).changes()).hasSize(1);
    }
    for (String wrong : List.of("assay", "limit-rule", "benkert-2022")) {
      assertThat(places(rule.formatted(wrong))).hasSize(1);
    }
  }

  @Test
  void read_aUnitOfAnAnalyte_isOneInWhichItIsMeasured() throws IOException {
    String rule = "\"unit.igg.csf\": { \"value\": \"%s\", \"source\": \"s\" }";
    assertThat(understood(rule.formatted("mg/dL")).changes()).containsKey("unit.igg.csf");
    assertThat(understood(rule.formatted("as-typed")).changes()).containsKey("unit.igg.csf");
    for (String wrong : List.of("florin", "/uL", "")) {
      assertThat(places(rule.formatted(wrong))).containsExactly("facts[\"unit.igg.csf\"].value");
    }
  }

  /** 180.156 g/mol comes in where the unit is used: 10 g/m³ against 1 mol/m³. */
  @Test
  void read_aUnitOfOneLaboratory_keepsItsSpellingAndItsSize() throws IOException {
    String rule = "\"unit.%s\": { \"value\": \"%s\", \"source\": \"s\" }";
    assertThat(understood(rule.formatted("glucose.csf@Invented Harbour", "mg/dl")).changes())
        .containsExactly(
            entry(
                "unit.glucose.csf@Invented Harbour",
                new Policy.Change(new FactValue.Unit("mg/dl", 10, true), "s")));
    assertThat(understood(rule.formatted("leukocytes.csf", "Mpt/l")).changes())
        .containsValue(new Policy.Change(new FactValue.Unit("Mpt/l", 1, false), "s"));
    assertThat(places(rule.formatted("glucose.csf@X", "/uL")))
        .containsExactly("facts[\"unit.glucose.csf@X\"].value");
    for (String unknown : List.of("glucose.csf@ ", "glucose.urine@X", "measles-igg.csf")) {
      assertThat(places(rule.formatted(unknown, "mg/dL")))
          .containsExactly("facts[\"unit." + unknown + "\"]");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "no-such-key|1|1|s",
        "igg-index.upper|1|mg/L|s",
        "igg-index.upper|1|florin|s",
        "igg-index.upper|-1|1|s",
        "igg-index.upper|\"high\"|1|s",
        "igg-index.upper|1e400|1|s",
        "bands.cut-off|2.5|1|s",
        "bands.cut-off|0|1|s",
        "molar-mass.igg|0|g/mol|s",
        "igg-index.upper|1|1|' '"
      })
  void read_whatMakesNoSense_isNotValid(String key, String value, String unit, String source)
      throws IOException {
    assertThat(places(fact(key, value, unit, source))).hasSize(1);
  }

  @Test
  void read_aMissingSourceUnitOrName_isNotValid() throws IOException {
    assertThat(places("\"igg-index.upper\": { \"value\": 1, \"unit\": \"1\" }"))
        .containsExactly("facts[\"igg-index.upper\"].source");
    assertThat(places("\"igg-index.upper\": { \"value\": 1, \"source\": \"s\" }"))
        .containsExactly("facts[\"igg-index.upper\"].unit");
    assertThat(problems("{ \"policy\": 2, \"facts\": {}, \"extra\": 1 }"))
        .extracting(InputProblem::place)
        .containsExactlyInAnyOrder("policy", "name", "extra");
    assertThat(problems("[")).isNotEmpty();
  }

  private static String fact(String key, String value, String unit, String source) {
    return "\"%s\": { \"value\": %s, \"unit\": \"%s\", \"source\": \"%s\" }"
        .formatted(key, value, unit, source);
  }

  private PolicyReading read(String text) throws IOException {
    Path file = folder.resolve("policy.json");
    Files.writeString(file, text);
    return PolicyFile.of(Facts.standard()).read(file);
  }

  private static String whole(String facts) {
    return "{ \"policy\": 1, \"name\": \"ours\", \"facts\": { %s } }".formatted(facts);
  }

  private Policy understood(String facts) throws IOException {
    return switch (read(whole(facts))) {
      case PolicyReading.Understood understood -> understood.policy();
      case PolicyReading.NotValid notValid -> throw new AssertionError(notValid.problems());
    };
  }

  private List<InputProblem> problems(String text) throws IOException {
    return switch (read(text)) {
      case PolicyReading.Understood understood -> List.of();
      case PolicyReading.NotValid notValid -> notValid.problems();
    };
  }

  private List<String> places(String facts) throws IOException {
    return problems(whole(facts)).stream().map(InputProblem::place).toList();
  }
}
