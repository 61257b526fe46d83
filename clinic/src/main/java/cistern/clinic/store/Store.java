package cistern.clinic.store;

import cistern.clinic.setting.Setting;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.sql.SQLTransientConnectionException;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.flywaydb.core.Flyway;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.TransactionSystemException;
import org.springframework.transaction.support.TransactionTemplate;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/**
 * An open store. What {@link #change} returns has been written to the disk: both engines are told
 * to write their log before they answer.
 */
public final class Store implements AutoCloseable {

  private final Location location;
  private final HikariDataSource source;
  private final TransactionTemplate transactions;
  private final JdbcClient client;

  private Store(Location location, HikariDataSource source) {
    this.location = location;
    this.source = source;
    this.transactions = new TransactionTemplate(new JdbcTransactionManager(source));
    this.client = JdbcClient.create(source);
  }

  /** Opens a store, makes it when there is none, and brings its schema to this version. */
  public static Store open(Location location) {
    HikariDataSource source =
        switch (location) {
          case Location.Folder folder -> embedded(folder);
          case Location.Server server -> server(server);
        };
    try {
      migrate(location, source);
    } catch (RuntimeException e) {
      source.close();
      throw e;
    }
    return new Store(location, source);
  }

  private static HikariDataSource embedded(Location.Folder location) {
    try {
      Files.createDirectories(location.folder());
      if (Files.notExists(location.file())) {
        Files.createFile(location.file());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    if (!SqliteLibrary.isLoaded()) {
      throw new IllegalStateException("SQLite does not run on this machine");
    }
    SQLiteConfig sqlite = new SQLiteConfig();
    sqlite.setJournalMode(SQLiteConfig.JournalMode.WAL);
    sqlite.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    sqlite.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    sqlite.enforceForeignKeys(true);
    // A connection that is opened while the file is away would put an empty one in its place.
    sqlite.resetOpenMode(SQLiteOpenMode.CREATE);
    sqlite.setBusyTimeout(Setting.STORE_BUSY.number());
    HikariConfig config = config();
    config.setJdbcUrl("jdbc:sqlite:" + location.file());
    config.setDataSourceProperties(sqlite.toProperties());
    return new HikariDataSource(config);
  }

  private static HikariDataSource server(Location.Server server) {
    HikariConfig config = config();
    config.setJdbcUrl(server.jdbc());
    // A server set to answer before its log is on the disk would lose what was acknowledged.
    config.setConnectionInitSql("set synchronous_commit = on");
    if (!server.user().isEmpty()) {
      config.setUsername(server.user());
      config.setPassword(server.password());
    }
    return new HikariDataSource(config);
  }

  private static HikariConfig config() {
    HikariConfig config = new HikariConfig();
    config.setPoolName("store");
    config.setMaximumPoolSize(Setting.STORE_CONNECTIONS.number());
    config.setConnectionTimeout(Setting.STORE_WAIT.number());
    return config;
  }

  private static void migrate(Location location, HikariDataSource source) {
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
    Flyway.configure()
        .dataSource(source)
        .locations("classpath:db/cistern/both", "classpath:db/cistern/" + engine)
        .placeholders(Map.of("bytes", bytes))
        .load()
        .migrate();
  }

  /** Makes one change, wholly or not at all; a failure undoes it and is thrown on. */
  public <T> T change(Function<JdbcClient, T> work) {
    checkThere();
    try {
      return Objects.requireNonNull(transactions.execute(status -> work.apply(client)));
    } catch (TransactionSystemException e) {
      throw reason(e);
    }
  }

  /**
   * SQLite goes on writing to a file that was taken away; who then put another in its place would
   * lose what was acknowledged meanwhile.
   */
  private void checkThere() {
    if (location instanceof Location.Folder folder && !Files.exists(folder.file())) {
      throw new IllegalStateException(new SQLTransientConnectionException("the file is gone"));
    }
  }

  /**
   * Why a change failed. SQLite has undone it already when its disk is full; that it then cannot be
   * undone again is not the reason.
   */
  private static RuntimeException reason(TransactionSystemException failure) {
    return failure.getApplicationException() instanceof RuntimeException reason ? reason : failure;
  }

  /** Looks something up. */
  public <T> T look(Function<JdbcClient, T> question) {
    return question.apply(client);
  }

  /** Where it lies. */
  public Location location() {
    return location;
  }

  @Override
  public void close() {
    source.close();
  }
}
