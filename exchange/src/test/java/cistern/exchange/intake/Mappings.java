package cistern.exchange.intake;

import cistern.exchange.json.InputProblems;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.MappingFile;
import cistern.fact.Facts;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Mapping files for tests, by the reader of mapping files. */
final class Mappings {

  private Mappings() {}

  /** A mapping of some codes. */
  static LocalMapping of(String codes) {
    return read(
        "{\"mapping\":1,\"confirmedBy\":\"Dr Test\",\"codes\":[" + codes + "]}", problems());
  }

  /** A mapping of headings, with more members before them. */
  static LocalMapping columns(String more, String columns) {
    return read(
        "{\"mapping\":1,\"confirmedBy\":\"Dr Test\"," + more + "\"columns\":[" + columns + "]}",
        problems());
  }

  private static InputProblems problems() {
    return new InputProblems();
  }

  static LocalMapping read(String text, InputProblems problems) {
    try {
      Path file = Files.createTempFile("mapping", ".json");
      try {
        Files.writeString(file, text);
        return MappingFile.of(Facts.standard())
            .read(file, problems)
            .orElseThrow(() -> new IllegalStateException(problems.invalid().toString()));
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
