package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Exports without what names a person, from the command line; invented data. */
class DeidentifyTest {

  private static final String SECRET = "an-invented-secret-of-a-site-0815";
  private static final Pattern PERSON = Pattern.compile("p-[0-9a-f]{32}");

  private static final String WORKUP =
      """
      { "id": "Marlene.Bern", "note": "Marlene", "clinician": "Dr Marlene",
        "person": { "id": "q-77", "name": "Marlene, Ann", "birthDate": "1997-05-06",
          "ageYears": 34, "sex": "female" },
        "draws": { "csf": { "at": "2031-05-06T10:15:00+02:00" },
                   "serum": { "at": "2031-05-06T11:00:00+02:00" } },
        "results": [ { "analyte": "albumin", "in": "csf", "value": 220.0, "unit": "mg/L",
                       "assay": "Marlene" } ],
        "letter": { "to": "Marlene", "by": "Marlene" }, "Marlene": 1 }
      """;

  @TempDir private Path folder;
  private Path workup = Path.of("");
  private Path secret = Path.of("");

  @BeforeEach
  void write() throws IOException {
    workup = Files.writeString(folder.resolve("w.json"), WORKUP);
    secret = secret(SECRET + "\n");
  }

  private Path secret(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("site.secret"), text);
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
  }

  private Run safe(String format, String... more) {
    List<String> all =
        List.of(
            "convert",
            workup.toString(),
            "--to",
            format,
            "--de-identify",
            "--site-secret",
            secret.toString());
    return Run.of(Stream.concat(all.stream(), Stream.of(more)).toArray(String[]::new));
  }

  @ParameterizedTest
  @ValueSource(strings = {"workup", "fhir", "hl7v2", "table"})
  void convert_deidentified_holdsTheResultsAndNothingOfThePerson(String format) {
    Run run = safe(format);
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("220").containsPattern(PERSON);
    assertThat(run.out() + run.err())
        .doesNotContain("Marlene", "q-77", "2031-05-06", "20310506", "1997-05-06", SECRET);
    assertThat(run.out()).containsAnyOf("T10:15", "101500");
    assertThat(run.err())
        .contains("w.json, work-up 1: left out: note, clinician, person.name, results[0].assay")
        .contains("1 field not known here", "Persons in the smallest: 1.")
        .contains("Warning: groups of fewer than 5 persons: 1.");
  }

  @Test
  void convert_onePersonInEveryFormat_hasOnePseudonym() {
    List<String> persons =
        Stream.of("workup", "fhir", "hl7v2", "table").map(f -> person(safe(f).out())).toList();
    assertThat(persons).hasSize(4).containsOnly(persons.getFirst());
  }

  private static String person(String out) {
    Matcher found = PERSON.matcher(out);
    return found.find() ? found.group() : "";
  }

  @Test
  void convert_toFhir_saysSoAndNamesNobodyWhoMadeIt() {
    assertThat(safe("fhir").out())
        .contains("PSEUDED", "masked")
        .doesNotContain("Provenance", "\"Device\"", "presentedForm", "\"family\"", "\"given\"");
  }

  @Test
  void convert_toFolder_namesFilesByPseudonym() throws IOException {
    Path out = folder.resolve("out");
    assertThat(safe("workup", "--out", out + "/").code()).isZero();
    try (Stream<Path> files = Files.list(out)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .singleElement()
          .asString()
          .matches("w-[0-9a-f]{32}\\.json");
    }
  }

  @Test
  void convert_groupsOfEnoughPersons_areNotWarnedOf() throws IOException {
    StringBuilder rows = new StringBuilder("id,person.id,ageYears,sex,csf.at,albumin.csf\n");
    for (int i = 0; i < 5; i++) {
      rows.append("r-%d,p-%d,3%d,male,,220\n".formatted(i, i, i));
    }
    workup = Files.writeString(folder.resolve("t.csv"), rows + "r-9,p-1,34,male,,230\n");
    Run run = safe("table");
    assertThat(run.code()).isZero();
    assertThat(run.err()).contains("Persons in the smallest: 5.").doesNotContain("Warning");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "too short\n", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"})
  void convert_withASecretThatCanBeGuessed_isRefusedAndSaysHowToMakeOne(String text)
      throws IOException {
    secret = secret(text);
    Run run = safe("table");
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("openssl rand -hex 32").doesNotContain("too short\n");
  }

  @Test
  void convert_withASecretThatOthersCanRead_saysSo() throws IOException {
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-r--r--"));
    assertThat(safe("table").err()).contains("others can read this file");
  }

  @Test
  void convert_withHalfOfTheOptions_isAWrongCommandLine() {
    String file = workup.toString();
    assertThat(Run.of("convert", file, "--to", "table", "--de-identify").code()).isEqualTo(2);
    assertThat(Run.of("convert", file, "--to", "table", "--site-secret", "x").code()).isEqualTo(2);
    assertThat(safe("table", "--propose-mapping").code()).isEqualTo(2);
  }

  @Test
  void convert_datesThatCannotBeShifted_writesNothing() throws IOException {
    workup =
        Files.writeString(
            folder.resolve("old.json"),
            "{\"id\":\"a\",\"draws\":{\"csf\":{\"at\":\"1900-01-01T10:15:00Z\"}}}");
    Run run = safe("workup");
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("old.json, work-up 1: draws.csf.at");
  }
}
