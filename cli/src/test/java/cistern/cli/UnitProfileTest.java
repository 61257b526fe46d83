package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Papers in the units of a laboratory; numbers of the formats stay in the promised units. */
class UnitProfileTest {

  private static final String CASE = "../examples/infection-like.json";

  private static final Map<String, String> AMERICAN =
      Map.ofEntries(
          Map.entry("albumin.csf", "mg/dL"),
          Map.entry("albumin.serum", "g/dL"),
          Map.entry("igg.csf", "mg/dL"),
          Map.entry("igg.serum", "mg/dL"),
          Map.entry("total-protein.csf", "mg/dL"),
          Map.entry("glucose.csf", "mg/dL"),
          Map.entry("glucose.serum", "mg/dL"),
          Map.entry("lactate.csf", "mg/dL"),
          Map.entry("leukocytes.csf", "/mm3"),
          Map.entry("erythrocytes.csf", "/mm3"),
          Map.entry("kappa-flc.csf", "mg/dL"),
          Map.entry("kappa-flc.serum", "mg/dL"));

  @TempDir Path folder;
  private String policy = "";

  @BeforeEach
  void write() throws IOException {
    policy = policy("");
  }

  private String policy(String laboratory) throws IOException {
    String facts =
        AMERICAN.entrySet().stream()
            .map(
                e ->
                    "\"unit.%s%s\":{\"value\":\"%s\",\"source\":\"invented handbook\"}"
                        .formatted(e.getKey(), laboratory, e.getValue()))
            .collect(Collectors.joining(","));
    return Files.writeString(
            folder.resolve("policy" + laboratory.length() + ".json"),
            "{\"policy\":1,\"name\":\"invented\",\"facts\":{" + facts + "}}")
        .toString();
  }

  /** Facts among the sources keep their words; every other unit is the chosen one. */
  @ParameterizedTest
  @ValueSource(strings = {"clinician", "referrer", "chart", "patient"})
  void interpret_underAProfile_mixesNoOtherUnitIn(String reader) {
    String text = Run.of("interpret", "--for", reader, "--policy", policy, CASE).out();
    assertThat(text.replaceAll("(?s)\nSources\n.*", ""))
        .isNotBlank()
        .doesNotContain("mmol", "mg/L", " g/L", "/µL");
  }

  @Test
  void interpret_underAProfile_printsLimitAndIntervalInTheUnitOfTheValue() {
    String text = Run.of("interpret", "--policy", policy, CASE).out();
    assertThat(text)
        .containsPattern("lactate +52 mg/dL +≤ 24\\.3 +above")
        .containsPattern("95 % interval 47 to 58")
        .containsPattern("total protein +162 mg/dL +≤ 49 ")
        .contains("CSF: 115 mg/dL; Serum or blood: 3.8 g/dL");
  }

  @Test
  void interpret_asJson_holdsTheSameNumbersAndUnits() {
    List<String> formats = List.of("json", "table");
    for (String format : formats) {
      String plain = Run.of("interpret", "--format", format, CASE).out();
      String written = Run.of("interpret", "--format", format, "--policy", policy, CASE).out();
      assertThat(numbers(written)).isEqualTo(numbers(plain));
    }
  }

  private static String numbers(String json) {
    return json.replaceAll("\"(text|act|note|comment|policy|name|finding)\" : [^\n]*", "");
  }

  /** Two laboratories at two punctures: the house's units, one in each row, and named in it. */
  @Test
  void compare_ofTwoLaboratories_writesEachRowInOneUnit() throws IOException {
    Path first = at("first", "Invented Harbour");
    Path second = at("second", "Invented Hill");
    String ofOne = policy("@Invented Harbour");

    String mixed = Run.of("compare", "--policy", ofOne, first.toString(), second.toString()).out();
    assertThat(mixed).contains("CSF albumin, mg/L – from: 310; to: 215").doesNotContain("mg/dL");
    Path same = at("second", "Invented Harbour");
    String one = Run.of("compare", "--policy", ofOne, first.toString(), same.toString()).out();
    assertThat(one).contains("CSF albumin, mg/dL – from: 31; to: 21.5").doesNotContain(", mg/L");
  }

  private Path at(String which, String laboratory) throws IOException {
    String workup = Files.readString(Path.of("../examples/repeat-" + which + ".json"));
    return Files.writeString(
        folder.resolve(which + ".json"),
        workup.replaceFirst("\\{", "{ \"laboratory\": \"" + laboratory + "\","));
  }

  @Test
  void interpret_underAnImpossibleUnit_saysWhereAndWritesNothing() throws IOException {
    String wrong =
        Files.writeString(
                folder.resolve("wrong.json"),
                "{\"policy\":1,\"name\":\"n\",\"facts\":{\"unit.glucose.csf@X\":"
                    + "{\"value\":\"/uL\",\"source\":\"s\"}}}")
            .toString();
    Run run = Run.of("interpret", "--policy", wrong, CASE);

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("facts[\"unit.glucose.csf@X\"].value", "not a unit of glucose");
  }
}
