package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Twelve invented cases: what a senior colleague would say first stands first in every paper. */
class VignettesTest {

  private static final Page PAGE = Page.of("test", Facts.standard());

  record Vignette(String results, String members, String first, String patient) {}

  static Stream<Named<Vignette>> vignettes() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(VignettesTest.class.getResourceAsStream("/urgent/vignettes.txt"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(" \\| ", -1))
          .map(p -> Named.of(p[0], new Vignette(p[1], p[2], p[3], p[4])));
    }
  }

  @ParameterizedTest
  @MethodSource("vignettes")
  void papers_ofAVignette_beginWithWhatMatters(Vignette vignette) throws IOException {
    Interpretation got = ShortWorkup.interpret(vignette.results, vignette.members);
    String text = PAGE.toPlainText(got, Audience.CLINICIAN);
    String letter = PAGE.toPlainText(got, Audience.REFERRER);
    String patient = PAGE.toPlainText(got, Audience.PATIENT);
    readAloud(vignette, text + "\n----- letter\n" + letter + "\n----- person\n" + patient);

    assertThat(got.statements().getFirst().text()).startsWith(vignette.first);
    assertThat(flat(text)).contains(vignette.first);
    assertThat(flat(letter)).contains(vignette.first);
    boolean isToday = vignette.patient.equals("today");
    assertThat(patient.contains("Please speak to your doctor today")).isEqualTo(isToday);
    assertThat(patient.contains("What was found")).isNotEqualTo(isToday);
  }

  private static String flat(String text) {
    return text.replaceAll("\\s+", " ");
  }

  /** With {@code -Dvignettes.to=FOLDER} the papers are written there, to be read by a person. */
  private static void readAloud(Vignette vignette, String papers) throws IOException {
    String folder = System.getProperty("vignettes.to", "");
    if (!folder.isEmpty()) {
      String name = vignette.first.replaceAll("[^A-Za-z0-9]+", "-") + ".txt";
      Files.createDirectories(Path.of(folder));
      Files.writeString(Path.of(folder, name), papers);
    }
  }
}
