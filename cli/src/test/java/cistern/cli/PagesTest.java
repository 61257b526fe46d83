package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pages from the command line; source: the project's contract for commands and exit codes. */
class PagesTest {

  private static final String TYPICAL = "../examples/typical-ms.json";
  private static final String LEAK = "../examples/barrier-leak.json";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"html", "pdf"})
  void interpret_severalPagesOntoOneStream_isRefused(String format) {
    Run run = Run.of("interpret", "--format", format, TYPICAL, LEAK);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--out FOLDER/");
    assertThat(run.out()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"clinician", "referrer", "patient"})
  void interpret_inventedDataAsHtml_saysSo(String reader) {
    Run run = Run.of("interpret", "--format", "html", "--for", reader, TYPICAL);

    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .startsWith("<!DOCTYPE html>")
        .contains("The data of this work-up are invented.");
  }

  @Test
  void interpret_aMisspeltField_isNamedToTheClinicianOnly() throws IOException {
    String misspelt =
        Files.readString(Path.of(TYPICAL)).replaceFirst("\\{", "{ \"colourr\": \"clear\", ");

    assertThat(Run.withInput(misspelt, "interpret", "-").out()).contains("The field colourr");
    assertThat(Run.withInput(misspelt, "interpret", "--for", "referrer", "-").out())
        .contains("Dear colleague")
        .doesNotContain("not known here");
    assertThat(Run.withInput(misspelt, "interpret", "--for", "patient", "-").out())
        .contains("Your spinal fluid test")
        .doesNotContain("second look");
  }

  @Test
  void interpret_asPdf_holdsTheWorkupWithTheDigitsItHad() throws IOException {
    Path out = folder.resolve("page.pdf");
    Run run = Run.of("interpret", "--format", "pdf", "--out", out.toString(), TYPICAL);

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    try (PDDocument pdf = Loader.loadPDF(out.toFile())) {
      var files = pdf.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
      assertThat(files).containsOnlyKeys("workup.json", "interpretation.json");
      byte[] workup =
          Objects.requireNonNull(files.get("workup.json")).getEmbeddedFile().toByteArray();
      assertThat(new String(workup, StandardCharsets.UTF_8)).contains("\"fennmoor-01\"", "20.4");
    }
  }

  @Test
  void interpret_underAPolicyForAnotherPaper_usesIt() throws IOException {
    Path out = folder.resolve("page.pdf");
    Run run =
        Run.of(
            "interpret",
            "--format",
            "pdf",
            "--policy",
            policy("letter").toString(),
            "--out",
            out.toString(),
            TYPICAL);

    assertThat(run.err()).isEmpty();
    try (PDDocument pdf = Loader.loadPDF(out.toFile())) {
      // US Letter is 612 points wide
      assertThat(pdf.getPage(0).getMediaBox().getWidth()).isEqualTo(612f);
    }
  }

  @Test
  void interpret_underAPolicyForUnknownPaper_isNotValid() throws IOException {
    Run run = Run.of("interpret", "--policy", policy("papyrus").toString(), TYPICAL);

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("page.paper");
  }

  private Path policy(String paper) throws IOException {
    return Files.writeString(
        folder.resolve("policy.json"),
        """
        {"policy": 1, "name": "paper", "facts":
          {"page.paper": {"value": "%s", "unit": "", "source": "the printer"}}}
        """
            .formatted(paper));
  }

  @Test
  void interpret_forTheChart_isTheCommentOfTheJson() {
    Run chart = Run.of("interpret", "--for", "chart", TYPICAL);
    Run json = Run.of("interpret", "--format", "json", TYPICAL);

    assertThat(chart.out().lines()).hasSize(1);
    assertThat(json.out())
        .contains("\"comment\" : \"" + chart.out().strip().replace("\"", "\\\"") + "\"");
  }

  @Test
  void interpret_patientInGerman_isGermanAndAnUnknownLanguageIsRefused() {
    assertThat(Run.of("interpret", "--for", "patient", "--language", "de", TYPICAL).out())
        .startsWith("Ihr Test des Nervenwassers")
        .contains("Die Daten dieser Untersuchung sind erfunden.");
    assertThat(Run.of("interpret", "--for", "patient", "--language", "xx", TYPICAL).code())
        .isEqualTo(2);
  }
}
