package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The command as a person uses it; source: the project's contract for commands and exit codes. */
class InterpretTest {

  private static final String TYPICAL = "../examples/typical-ms.json";
  private static final String LEAK = "../examples/barrier-leak.json";

  @TempDir Path folder;

  @Nested
  class Good {

    @Test
    void interpret_oneFile_writesTheAnswerFirst() {
      Run run = Run.of("interpret", TYPICAL);

      assertThat(run.code()).isZero();
      assertThat(run.err()).isEmpty();
      assertThat(run.out()).contains("IgG is made inside the CNS").contains("not a medical device");
    }

    @Test
    void interpret_oneFileAsJson_isAnObject() {
      Run run = Run.of("interpret", "--format", "json", TYPICAL);

      assertThat(run.code()).isZero();
      assertThat(run.out()).startsWith("{").endsWith("}\n");
    }

    @Test
    void interpret_severalFilesAsJson_isAnArray() {
      Run run = Run.of("interpret", "--format", "json", TYPICAL, LEAK);

      assertThat(run.code()).isZero();
      assertThat(run.out().strip()).startsWith("[").endsWith("]");
      assertThat(run.out()).contains("\"typical-ms\"").contains("\"barrier-leak\"");
    }

    @Test
    void interpret_standardInput_isRead() throws IOException {
      Run run = Run.withInput(Files.readString(Path.of(TYPICAL)), "interpret", "-");

      assertThat(run.code()).isZero();
      assertThat(run.out()).contains("typical-ms");
    }

    @Test
    void interpret_intoAFolder_namesEachResultAfterItsId() throws IOException {
      Path out = folder.resolve("results");
      Run run = Run.of("interpret", "--format", "json", "--out", out + "/", TYPICAL, LEAK);

      assertThat(run.code()).isZero();
      assertThat(run.out()).isEmpty();
      try (var files = Files.list(out)) {
        assertThat(files.map(f -> f.getFileName().toString()))
            .containsExactlyInAnyOrder("typical-ms.json", "barrier-leak.json");
      }
    }

    @Test
    void interpret_intoAFile_writesItWhole() throws IOException {
      Path out = folder.resolve("result.txt");
      Run run = Run.of("interpret", "--out", out.toString(), TYPICAL);

      assertThat(run.code()).isZero();
      assertThat(Files.readString(out)).contains("typical-ms");
      assertThat(folder.toFile().list()).containsExactly("result.txt");
    }

    @Test
    void interpret_asHtmlAndPdf_isAWholeDocumentForEachReader() throws IOException {
      for (String reader : List.of("clinician", "referrer", "patient")) {
        Run html = Run.of("interpret", "--format", "html", "--for", reader, TYPICAL);
        assertThat(html.code()).isZero();
        assertThat(html.out()).startsWith("<!DOCTYPE html>").contains("invented");

        Path pdf = folder.resolve(reader + ".pdf");
        Run paper =
            Run.of("interpret", "--format", "pdf", "--for", reader, "--out", pdf + "", TYPICAL);
        assertThat(paper.err()).isEmpty();
        assertThat(paper.code()).isZero();
        assertThat(new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1))
            .startsWith("%PDF-1.");
      }
    }

    @Test
    void interpret_asTextForAPatient_holdsNoProbability() {
      Run run = Run.of("interpret", "--for", "patient", TYPICAL);

      assertThat(run.code()).isZero();
      assertThat(run.out()).contains("What was found").doesNotContain("chances in");
      assertThat(Run.of("interpret", "--for", "referrer", TYPICAL).out())
          .contains("Dear colleague");
    }

    @Test
    void interpret_severalPagesOntoOneStream_isAWrongCommandLine() {
      assertThat(Run.of("interpret", "--format", "html", TYPICAL, LEAK).code()).isEqualTo(2);
    }

    @Test
    void interpret_underPolicy_namesItAndUsesIt() throws IOException {
      Path policy = folder.resolve("policy.json");
      Files.writeString(
          policy,
          """
          { "policy": 1, "name": "island clinic",
            "facts": { "bands.cut-off": { "value": 10, "unit": "1", "source": "protocol 3" } } }
          """);
      Run run = Run.of("interpret", "--policy", policy.toString(), "--format", "json", TYPICAL);

      assertThat(run.code()).isZero();
      assertThat(run.out())
          .contains("\"policy\" : \"island clinic\"")
          .contains("\"cutOff\" : 10")
          .contains("\"verdict\" : \"borderline\"");
    }
  }

  @Nested
  class Bad {

    @ParameterizedTest
    @ValueSource(
        strings = {
          "",
          "[]",
          "{ \"workup\": 1 }",
          "{ \"workup\": 1, \"id\": \"a b\" }",
          "{ \"workup\": 1, \"id\": \"x\", \"results\": [ { \"analyte\": \"igg\" } ] }",
          "{ \"workup\": 1, \"id\": \"x\", \"results\": [ { \"analyte\": \"igg\", \"in\": \"csf\","
              + " \"value\": NaN, \"unit\": \"mg/L\" } ] }",
          "{ \"workup\": 1, \"id\": \"x\", \"results\": [ { \"analyte\": \"igg\", \"in\": \"csf\","
              + " \"value\": 4713, \"unit\": \"mg/24h\" } ] }"
        })
    void interpret_whatIsNotValid_saysWhereAndWritesNothing(String input) {
      Run run = Run.withInput(input, "interpret", "-");

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.out()).isEmpty();
      assertThat(run.err())
          .isNotBlank()
          .doesNotContain("Exception")
          .doesNotContain("\tat ")
          .doesNotContain("4713");
    }

    @Test
    void interpret_everyProblem_isSaidAtOnceWithItsPlace() {
      Run run =
          Run.withInput(
              """
              { "workup": 1, "id": "x", "results": [
                { "analyte": "igg", "in": "csf", "value": 3, "unit": "g" },
                { "analyte": "igg", "in": "serum", "value": -1, "unit": "g/L" },
                { "analyte": "iga", "in": "csf", "below": 1, "above": 2, "unit": "mg/L" } ] }
              """,
              "interpret",
              "-");

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.err()).contains("results[0].unit", "results[1].value", "results[2]");
    }

    @Test
    void interpret_aBadFileAmongGood_doesNotStopTheOthers() throws IOException {
      Path bad = folder.resolve("bad.json");
      Files.writeString(bad, "{");
      Run run = Run.of("interpret", "--format", "json", bad.toString(), TYPICAL);

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.err()).contains("bad.json");
      assertThat(run.out().strip()).startsWith("[").endsWith("]").contains("typical-ms");
    }

    @Test
    void interpret_anIdTwiceIntoAFolder_keepsTheFirst() throws IOException {
      Path copy = folder.resolve("copy.json");
      Files.writeString(
          copy, Files.readString(Path.of(LEAK)).replace("\"barrier-leak\"", "\"typical-ms\""));
      Path out = Files.createDirectory(folder.resolve("out"));
      Run run = Run.of("interpret", "--out", out.toString(), TYPICAL, copy.toString());

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.err()).contains("copy.json").contains("the same id");
      assertThat(Files.readString(out.resolve("typical-ms.txt")))
          .contains("IgG is made inside the CNS");
    }

    @Test
    void interpret_noSuchFileOrAFolder_isInvalidInput() {
      assertThat(Run.of("interpret", folder.resolve("none.json").toString()).code()).isEqualTo(3);
      assertThat(Run.of("interpret", folder.toString()).code()).isEqualTo(3);
    }

    @Test
    void interpret_whereNothingCanBeWritten_isNotWritten() {
      Run run = Run.of("interpret", "--out", "/proc/none/result.txt", TYPICAL);

      assertThat(run.code()).isEqualTo(4);
      assertThat(run.err()).contains("could not be written").doesNotContain("\tat ");
    }

    @Test
    void interpret_underABadPolicy_isInvalidInput() throws IOException {
      Path policy = folder.resolve("policy.json");
      Files.writeString(
          policy, "{ \"policy\": 1, \"name\": \"p\", \"facts\": { \"no-such-key\": {} } }");
      Run run = Run.of("interpret", "--policy", policy.toString(), TYPICAL);

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.out()).isEmpty();
      assertThat(run.err()).contains("no-such-key");
    }

    @ParameterizedTest
    @ValueSource(strings = {"interpret", "frobnicate", "interpret --format xml x.json", ""})
    void cistern_aWrongCommandLine_isTwo(String line) {
      String[] arguments = line.isEmpty() ? new String[0] : line.split(" ", -1);

      assertThat(Run.of(arguments).code()).isEqualTo(2);
    }
  }

  @Nested
  class Facts {

    @Test
    void facts_asText_showsSourcesAndStatus() {
      Run run = Run.of("facts");

      assertThat(run.code()).isZero();
      assertThat(run.out()).contains("igg-index.upper", "Deisenhammer 2025", "memory");
      assertThat(run.out()).contains("clinic.session.minutes", "project-rule");
    }

    @Test
    void facts_asJson_isAnArrayUnderPolicyToo() throws IOException {
      Path policy = folder.resolve("policy.json");
      Files.writeString(
          policy,
          """
          { "policy": 1, "name": "p", "facts": {
            "total-protein.upper": { "value": 0.6, "unit": "g/L", "source": "memo" } } }
          """,
          StandardCharsets.UTF_8);
      Run run = Run.of("facts", "--format", "json", "--policy", policy.toString());

      assertThat(run.code()).isZero();
      assertThat(run.out().strip()).startsWith("[").endsWith("]");
      assertThat(run.out()).contains("\"standard\" : 500").contains("\"changed\" : true");
    }
  }

  @Nested
  class Elsewhere {

    @Test
    void interpret_severalFilesAsText_standOneAfterAnother() {
      Run run = Run.of("interpret", TYPICAL, LEAK);

      assertThat(run.code()).isZero();
      assertThat(run.out())
          .contains("CSF work-up typical-ms")
          .contains("\nCSF work-up barrier-leak");
    }

    @Test
    void interpret_severalBadInputs_writesNothing() {
      Run run = Run.of("interpret", "--format", "json", "none-1.json", "none-2.json");

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.out()).isEmpty();
      assertThat(run.err()).contains("none-1.json").contains("none-2.json");
    }

    @Test
    void interpret_aBadInputIntoAFile_leavesNoFile() {
      Path out = folder.resolve("result.json");
      Run run = Run.of("interpret", "--out", out.toString(), "none.json");

      assertThat(run.code()).isEqualTo(3);
      assertThat(folder.toFile().list()).isEmpty();
    }

    @Test
    void interpret_ontoTheHyphen_isStandardOutput() {
      Run run = Run.of("interpret", "--out", "-", TYPICAL);

      assertThat(run.code()).isZero();
      assertThat(run.out()).contains("Work-up typical-ms");
    }

    @Test
    void interpret_severalIntoANewName_makesAFolderOrAFile() {
      Run intoFolder =
          Run.of("interpret", "--out", folder.resolve("results").toString(), TYPICAL, LEAK);
      Run intoFile =
          Run.of("interpret", "--out", folder.resolve("all.txt").toString(), TYPICAL, LEAK);

      assertThat(intoFolder.code()).isZero();
      assertThat(folder.resolve("results").toFile().list()).hasSize(2);
      assertThat(intoFile.code()).isZero();
      assertThat(folder.resolve("all.txt")).isRegularFile();
    }

    @Test
    void facts_underABadPolicy_isInvalidInput() {
      Run run = Run.of("facts", "--policy", "none.json");

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.out()).isEmpty();
    }

    @Test
    void version_ofTheProgram_isNamed() {
      assertThat(Run.of("--version").out()).startsWith("Cistern");
    }
  }

  @Test
  void help_ofEveryCommand_showsAWorkedExample() {
    for (String command : List.of("interpret", "facts")) {
      Run run = Run.of(command, "--help");

      assertThat(run.code()).isZero();
      assertThat(run.out()).contains("Example: cistern " + command);
    }
  }
}
