package cistern.clinic.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Objects;

/** Stores as earlier releases left them, with invented data. */
public final class Released {

  private static final String END = "\n--;;\n";

  private Released() {}

  /** Writes the store of a release to where there is none. */
  public static void write(int schema, Location location) {
    try (Connection connection = connection(location);
        Statement statement = connection.createStatement()) {
      for (String sql : text(schema, location).split(END, -1)) {
        if (!sql.isBlank()) {
          statement.execute(sql);
        }
      }
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Connection connection(Location location) throws SQLException {
    return switch (location) {
      case Location.Folder folder -> DriverManager.getConnection("jdbc:sqlite:" + folder.file());
      case Location.Server server ->
          DriverManager.getConnection(server.jdbc(), server.user(), server.password());
    };
  }

  private static String text(int schema, Location location) {
    String engine =
        switch (location) {
          case Location.Folder folder -> "sqlite";
          case Location.Server server -> "postgresql";
        };
    String name = "released-%d-%s.sql".formatted(schema, engine);
    try (InputStream in = Objects.requireNonNull(Released.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
