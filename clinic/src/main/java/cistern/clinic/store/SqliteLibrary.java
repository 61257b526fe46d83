package cistern.clinic.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.sqlite.SQLiteJDBCLoader;

/**
 * The native part of SQLite. It is unpacked to a file to be loaded, which is removed as soon as it
 * is: a process that is killed would otherwise leave it behind every time.
 */
final class SqliteLibrary {

  private static final String FOLDER = "org.sqlite.tmpdir";

  private SqliteLibrary() {}

  /** What is loaded once in a process. */
  private static final class Loaded {
    private static final boolean IS_LOADED = load();

    private static boolean load() {
      try {
        Path folder = Files.createTempDirectory("cistern-sqlite");
        System.setProperty(FOLDER, folder.toString());
        boolean isLoaded = SQLiteJDBCLoader.initialize();
        remove(folder);
        return isLoaded;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (Exception e) {
        throw new IllegalStateException(e);
      }
    }

    /** Where a loaded file cannot be removed, it goes when the process ends. */
    private static void remove(Path folder) {
      try (Stream<Path> files = Files.list(folder)) {
        List<Path> unpacked = files.toList();
        for (Path file : unpacked) {
          Files.deleteIfExists(file);
        }
        Files.deleteIfExists(folder);
      } catch (IOException e) {
        folder.toFile().deleteOnExit();
      }
    }
  }

  /** Whether it is loaded; loads it the first time. */
  static boolean isLoaded() {
    return Loaded.IS_LOADED;
  }
}
