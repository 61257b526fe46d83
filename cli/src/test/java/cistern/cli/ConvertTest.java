package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Work-ups out and in again through every carrier, from the command line; invented data. */
class ConvertTest {

  private static final String WORKUP =
      """
      { "workup": 1, "id": "round-1", "invented": true,
        "person": { "id": "p|7", "name": "Ex^am|ple, A&n~n\\\\", "ageYears": 34, "sex": "female" },
        "draws": { "csf": { "at": "2031-03-02T10:15:00+01:00" },
                   "serum": { "at": "2031-03-02T11:00:00+02:00" } },
        "results": [
          { "analyte": "albumin", "in": "csf", "value": 22.00, "unit": "mg/dL", "status": "amended" },
          { "analyte": "albumin", "in": "serum", "value": 42, "unit": "g/L" },
          { "analyte": "kappa-flc", "in": "csf", "below": 0.30, "unit": "mg/L" },
          { "analyte": "lactate", "in": "csf", "above": 20.0, "unit": "mmol/L" },
          { "analyte": "leukocytes", "in": "csf", "value": 9, "unit": "10*6/L", "reportedLimit": "<5" } ],
        "bands": { "csfOnly": 8, "shared": 0, "serumOnly": 0 } }
      """;

  @TempDir private Path folder;

  private String converted(String input, String... arguments) throws IOException {
    Path file = Files.createTempFile(folder, "in", ".txt");
    Files.writeString(file, input);
    String[] all =
        Stream.concat(Stream.of("convert", file.toString()), Stream.of(arguments))
            .toArray(String[]::new);
    Run run = Run.of(all);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return run.out();
  }

  @ParameterizedTest
  @ValueSource(strings = {"fhir", "hl7v2"})
  void convert_carrierAndBack_keepsDigitsUnitsLimitsAndZones(String carrier) throws IOException {
    String back = converted(converted(WORKUP, "--to", carrier), "--to", "workup");
    assertThat(back)
        .contains("\"value\": 22.00", "\"below\": 0.30", "\"above\": 20.0", "\"unit\": \"10*6/L\"")
        .contains("\"reportedLimit\": \"<5\"", "\"status\": \"amended\"")
        .contains("2031-03-02T10:15:00+01:00", "2031-03-02T11:00:00+02:00")
        .contains("\"csfOnly\": 8", "\"id\": \"p|7\"", "Ex^am|ple", "A&n~n")
        .contains("\"invented\": true")
        .doesNotContain("leftOver");
  }

  @Test
  void convert_fhirToMessagesToWorkupToFhir_isTheSameBundleOfResults() throws IOException {
    String fhir = converted(WORKUP, "--to", "fhir");
    String message = converted(fhir, "--to", "hl7v2");
    String workup = converted(message, "--to", "workup");
    String again = converted(workup, "--to", "fhir");
    assertThat(values(again)).isEqualTo(values(fhir));
  }

  private static String values(String bundle) {
    return bundle
        .lines()
        .filter(line -> line.matches(".*\"(value|code|comparator|collectedDateTime|status)\": .*"))
        .filter(
            line -> !line.contains("urn:uuid") && !line.matches(".*\"value\": \"[0-9a-f]{64}\".*"))
        .reduce("", (a, b) -> a + b + "\n");
  }

  @Test
  void convert_table_neutralisesFormulasAndReadsBack() throws IOException {
    String table =
        converted(WORKUP.replace("\"p|7\"", "\"=1+1\"").replace("Ex^am", "x"), "--to", "table");
    assertThat(table).contains("'=1+1").contains("<0.3").startsWith("id,person.id,ageYears");
    String back = converted(table, "--to", "workup");
    assertThat(back).contains("\"below\": 0.3", "\"csfOnly\": 8", "\"value\": 220");
  }

  @Test
  void convert_censoredValue_isStructuredNumericInMessages() throws IOException {
    String message = converted(WORKUP, "--to", "hl7v2");
    assertThat(message).contains("|SN|").contains("<^0.30").doesNotContain("|NM|kappa");
    assertThat(message).startsWith("MSH|^~\\&|CISTERN|").contains("|ORU^R01^ORU_R01|");
    assertThat(message).contains("Ex\\S\\am\\F\\ple^A\\T\\n\\R\\n\\E\\").contains("p\\F\\7");
  }

  @Test
  void interpret_messageWithPdf_carriesFindingsAndDocument() throws IOException {
    Path file = folder.resolve("w.json");
    Files.writeString(file, WORKUP);
    Run fhir = Run.of("interpret", file.toString(), "--format", "fhir", "--attach-pdf");
    assertThat(fhir.code()).isZero();
    assertThat(fhir.out())
        .contains("\"resourceType\": \"Provenance\"", "\"contentType\": \"application/pdf\"")
        .contains("\"code\": \"kappa-index\"", "\"derivedFrom\"", "DiagnosticReport.composition");
    Run hl7 = Run.of("interpret", file.toString(), "--format", "hl7v2");
    assertThat(hl7.out()).contains("albumin-quotient^").contains("NTE|1|L|Verdict");
    Run table = Run.of("interpret", file.toString(), "--format", "table");
    assertThat(table.out().lines()).hasSize(2);
    assertThat(table.out()).contains("albumin-quotient.verdict");
  }

  @Test
  void convert_proposedMapping_isRefusedUntilAPersonConfirmsIt() throws IOException {
    Path table = folder.resolve("t.csv");
    Files.writeString(table, "Nr;Alb Liquor (mg/L);Foo\np-1;220;3\n");
    Run proposal = Run.of("convert", table.toString(), "--propose-mapping");
    assertThat(proposal.out())
        .contains("\"means\": \"albumin\"", "\"in\": \"csf\"", "\"confirmedBy\": \"\"");
    Path mapping = folder.resolve("m.json");
    Files.writeString(mapping, proposal.out());
    Run refused =
        Run.of("convert", table.toString(), "--to", "workup", "--mapping", mapping.toString());
    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.err()).contains("confirmedBy");
    Files.writeString(
        mapping,
        proposal
            .out()
            .replace("\"confirmedBy\": \"\"", "\"confirmedBy\": \"Dr Example\"")
            .replace(
                "\"heading\": \"Nr\",\n      \"means\": \"\"",
                "\"heading\": \"Nr\", \"means\": \"person.id\"")
            .replace("\"means\": \"\"", "\"means\": \"ignore\""));
    Run read =
        Run.of("convert", table.toString(), "--to", "workup", "--mapping", mapping.toString());
    assertThat(read.err()).isEmpty();
    assertThat(read.out()).contains("\"id\": \"p-1\"", "\"value\": 220");
  }

  @ParameterizedTest
  @ValueSource(strings = {"report.hl7", "report.fhir.json", "report.csv"})
  void interpret_carriersOfOnePanel_giveTheSameInterpretation(String name) {
    Path examples = Path.of(System.getProperty("cistern.root", "..")).resolve("examples/exchange");
    Run run = Run.of("interpret", examples.resolve(name).toString(), "--format", "json");
    Run first = Run.of("interpret", examples.resolve("report.hl7").toString(), "--format", "json");
    assertThat(run.err()).isEmpty();
    assertThat(findings(run.out())).isEqualTo(findings(first.out()));
  }

  private static String findings(String json) {
    int start = json.indexOf("\"findings\"");
    return json.substring(start, json.indexOf("\"problems\"", start));
  }
}
