package cistern.clinic.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A new folder that goes with everything in it when it is closed.
 *
 * @param path where it is
 */
public record PassingFolder(Path path) implements AutoCloseable {

  /** A new folder, which only its owner may enter. */
  public static PassingFolder make(String name) {
    try {
      return new PassingFolder(Files.createTempDirectory(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    try (Stream<Path> files = Files.walk(path)) {
      List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
      for (Path file : deepestFirst) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
