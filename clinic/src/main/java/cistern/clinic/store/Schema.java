package cistern.clinic.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfoService;
import org.flywaydb.core.api.MigrationState;

/**
 * The tables of a store and their version.
 *
 * @param flyway what brings them to the newest
 */
record Schema(Flyway flyway) {

  /** How a file of the engine begins (SQLite file format, 1.3). */
  private static final String MAGIC = "SQLite format 3\0";

  static Schema of(Location location, DataSource source) {
    String engine =
        switch (location) {
          case Location.Folder folder -> "sqlite";
          case Location.Server server -> "postgresql";
        };
    String bytes =
        switch (location) {
          case Location.Folder folder -> "blob";
          case Location.Server server -> "bytea";
        };
    return new Schema(
        Flyway.configure()
            .dataSource(source)
            .locations("classpath:db/cistern/both", "classpath:db/cistern/" + engine)
            .placeholders(Map.of("bytes", bytes))
            .load());
  }

  void migrate() {
    flyway.migrate();
  }

  /**
   * Whether the tables are those of this version.
   *
   * @throws NotAStore when there are none, or those of a later program
   */
  boolean isNewest() {
    MigrationInfoService info = flyway.info();
    if (info.applied().length == 0) {
      throw new NotAStore("What is there is no store of this program: it holds nothing of it.");
    }
    if (Arrays.stream(info.all()).anyMatch(m -> m.getState() == MigrationState.FUTURE_SUCCESS)) {
      throw new NotAStore("The store is of a later version of the program: use that.");
    }
    return info.pending().length == 0;
  }

  /** Whether a file is one of the engine; an empty one is not, though the engine would take it. */
  static boolean isOfTheEngine(Path file) {
    byte[] magic = MAGIC.getBytes(StandardCharsets.US_ASCII);
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(magic.length), magic);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
