package cistern.checks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WrittenPagesTest {

  @TempDir Path root;

  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  private WrittenPages pages() {
    return new WrittenPages(root, new PrintStream(said, true, StandardCharsets.UTF_8));
  }

  private void write(String text) throws IOException {
    Path folder = Files.createDirectories(root.resolve("cli/target/pages"));
    Files.createDirectories(root.resolve("docs"));
    Files.writeString(root.resolve("cli/pom.xml"), "<project/>");
    Files.writeString(folder.resolve("facts.md"), text);
  }

  @Test
  void check_nothingWritten_isSame() throws IOException {
    assertThat(pages().check()).isTrue();
  }

  @Test
  void check_aPageThatIsMissingOrStale_isRefusedUntilRefreshed() throws IOException {
    write("one");
    assertThat(pages().check()).isFalse();
    assertThat(said.toString(StandardCharsets.UTF_8)).contains("docs/facts.md is not what");

    pages().refresh();
    assertThat(pages().check()).isTrue();
    assertThat(root.resolve("docs/facts.md")).hasContent("one");

    write("two");
    assertThat(pages().check()).isFalse();
  }
}
