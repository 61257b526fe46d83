package cistern.clinic.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** New folders of a run of tests, all in one, which goes with the run. */
public final class Folders {

  private static final AtomicInteger NUMBER = new AtomicInteger();

  private Folders() {}

  /** The folder of the run. */
  private static final class Run {
    private static final Path FOLDER = make();

    private static Path make() {
      try {
        Path folder = Files.createTempDirectory("cistern-tests");
        Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(folder)));
        return folder;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** A new folder, empty. */
  public static Path make(String name) {
    try {
      return Files.createDirectory(Run.FOLDER.resolve(name + "-" + NUMBER.incrementAndGet()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Removes a folder with everything in it; what a process that ends still writes may stay. */
  public static void remove(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
      for (Path file : deepestFirst) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
