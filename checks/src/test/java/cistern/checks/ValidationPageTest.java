package cistern.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ValidationPageTest {

  @TempDir Path root;

  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  @BeforeEach
  void twoModules() throws IOException {
    for (String module : new String[] {"medicine", "gel"}) {
      Files.createDirectories(root.resolve(module).resolve("src/main/java"));
      Files.writeString(root.resolve(module).resolve("pom.xml"), "<project/>");
      Files.writeString(root.resolve(module).resolve("src/main/java/A.java"), "class A {}");
    }
    row("medicine", "target/validation", "zeta", "agrees");
    row("medicine", "target/validation", "alpha|beta", "agrees");
  }

  @Test
  void refresh_rows_sortedUnderTheirModule() throws IOException {
    run("refresh", root.toString());

    assertThat(page())
        .containsSubsequence("### medicine", "| alpha\\|beta |", "| zeta |", "## Studies")
        .doesNotContain("### gel");
  }

  @Test
  void main_studies_writesTheOccasion() throws IOException {
    run("studies", root.toString(), "Run on a day, at a commit.");

    assertThat(page()).contains("Run on a day, at a commit.");
  }

  @Test
  void check_afterRefresh_same() throws IOException {
    refresh();

    assertThat(pageOf().check()).isTrue();
    assertThat(said()).contains("2 outside checks", "not been run yet");
  }

  @Test
  void check_aResultChanged_saysHowToRefresh() throws IOException {
    refresh();
    row("medicine", "target/validation", "zeta", "3 of 4 agree");

    assertThat(pageOf().check()).isFalse();
    assertThat(said()).contains("./check --refresh");
  }

  @Test
  void check_noPageYet_differs() throws IOException {
    assertThat(pageOf().check()).isFalse();
  }

  @Test
  void main_unknownWord_refused() {
    assertThatThrownBy(() -> run("compose", root.toString()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Nested
  class AfterALongRun {

    @BeforeEach
    void longRun() throws IOException {
      row("gel", "target/validation-long", "1000 gels", "97 % read");
      pageOf().withStudies(pageOf().studiesOf("Run on a day, at a commit."));
      said.reset();
    }

    @Test
    void refresh_later_keepsTheStudies() throws IOException {
      String before = page();

      refresh();

      assertThat(page()).isEqualTo(before).contains("Run on a day", "| 1000 gels |");
    }

    @Test
    void check_codeUnchanged_saysNothingOfAge() throws IOException {
      assertThat(pageOf().check()).isTrue();
      assertThat(said()).doesNotContain("older");
    }

    @Test
    void check_codeChanged_namesTheModule() throws IOException {
      Files.writeString(root.resolve("gel/src/main/java/A.java"), "class A { int b; }");

      assertThat(pageOf().check()).isTrue();
      assertThat(said()).contains("older than the code they cover in gel:");
    }

    @Test
    void check_moduleGone_namesTheModule() throws IOException {
      Files.delete(root.resolve("gel/pom.xml"));

      assertThat(pageOf().check()).isTrue();
      assertThat(said()).contains("cover in gel:");
    }
  }

  private void row(String module, String folder, String what, String result) {
    OutsideCheck.of(what, "a book", "exact").toFolder(root.resolve(module).resolve(folder), result);
  }

  private void refresh() throws IOException {
    pageOf().withStudies(pageOf().readStudies());
    said.reset();
  }

  private static void run(String... words) throws IOException {
    ValidationPage.main(words);
  }

  private ValidationPage pageOf() {
    return new ValidationPage(root, new PrintStream(said, true, StandardCharsets.UTF_8));
  }

  private String said() {
    return said.toString(StandardCharsets.UTF_8);
  }

  private String page() throws IOException {
    return Files.readString(root.resolve("docs/validation.md"));
  }
}
