package cistern.clinic.store;

import cistern.clinic.setting.Setting;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLTransientConnectionException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.TransactionSystemException;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.sqlite.SQLiteOpenMode;

/**
 * An open store. What {@link #change} returns has been written to the disk: both engines are told
 * to write their log before they answer.
 */
public final class Store implements AutoCloseable {

  private final Location location;
  private final HikariDataSource writing;
  private final HikariDataSource reading;
  private final Optional<PassingFolder> copy;
  private final TransactionTemplate transactions;
  private final TransactionTemplate snapshots;
  private final JdbcClient client;
  private final JdbcClient reader;

  /**
   * Every change waits for the one before, by the trail's head or by the file: they queue here,
   * where nobody polls and no connection is held meanwhile.
   */
  private final ReentrantLock turn = new ReentrantLock(true);

  private Store(Location location, Optional<PassingFolder> copy) {
    this.location = location;
    this.copy = copy;
    switch (location) {
      case Location.Folder folder -> {
        writing = embedded(folder, false);
        reading = embedded(folder, true);
      }
      case Location.Server server -> {
        writing = server(server);
        reading = writing;
      }
    }
    transactions = new TransactionTemplate(new JdbcTransactionManager(writing));
    snapshots = new TransactionTemplate(new JdbcTransactionManager(reading));
    if (location instanceof Location.Server) {
      snapshots.setReadOnly(true);
      snapshots.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
    }
    client = JdbcClient.create(writing);
    reader = JdbcClient.create(reading);
  }

  /** Opens a store, makes it when there is none, and brings its schema to this version. */
  public static Store open(Location location) {
    if (location instanceof Location.Folder folder) {
      make(folder);
    }
    return opened(location, Optional.empty(), true);
  }

  private static Store opened(Location location, Optional<PassingFolder> copy, boolean isMade) {
    Store store = new Store(location, copy);
    try {
      if (isMade) {
        Schema.of(location, store.writing).migrate();
      }
      if (location instanceof Location.Folder folder) {
        Private.close(folder.file());
      }
      return store;
    } catch (IOException e) {
      store.close();
      throw new UncheckedIOException(e);
    } catch (RuntimeException e) {
      store.close();
      throw e;
    }
  }

  private static void make(Location.Folder folder) {
    try {
      Private.folder(folder.folder());
      Private.file(folder.file());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Opens a store that is there, and makes and changes nothing of it. One of an earlier schema, or
   * one in a place that may only be read, is looked at in a copy that goes when it is closed.
   *
   * @throws NotAStore when there is none
   */
  public static Store existing(Location location) {
    return switch (location) {
      case Location.Folder folder -> existing(folder);
      case Location.Server server -> checked(opened(server, Optional.empty(), false));
    };
  }

  private static Store existing(Location.Folder folder) {
    if (!Files.isRegularFile(folder.file())) {
      throw new NotAStore("There is no store in " + folder.folder() + ".");
    }
    if (!Schema.isOfTheEngine(folder.file())) {
      throw new IllegalStateException(
          new SQLiteException("not a store", SQLiteErrorCode.SQLITE_NOTADB));
    }
    if (!isWritable(folder)) {
      return copied(folder);
    }
    Store store = opened(folder, Optional.empty(), false);
    try {
      if (Schema.of(folder, store.writing).isNewest()) {
        return store;
      }
    } catch (RuntimeException e) {
      store.close();
      throw e;
    }
    store.close();
    return copied(folder);
  }

  private static Store checked(Store store) {
    try {
      if (Schema.of(store.location, store.writing).isNewest()) {
        return store;
      }
      throw new NotAStore(
          "The store is of an earlier version of the program: make a backup with that, then start"
              + " this one's serve on it once.");
    } catch (RuntimeException e) {
      store.close();
      throw e;
    }
  }

  private static boolean isWritable(Location.Folder folder) {
    return Files.isWritable(folder.folder()) && Files.isWritable(folder.file());
  }

  /** A copy with its log of changes; the engine brings both together when it opens them. */
  private static Store copied(Location.Folder folder) {
    PassingFolder passing = PassingFolder.make("cistern-copy");
    Location.Folder copy = new Location.Folder(passing.path());
    try {
      List<Path> from = Private.beside(folder.file()).subList(0, 2);
      List<Path> to = Private.beside(copy.file());
      for (int i = 0; i < from.size(); i++) {
        if (Files.exists(from.get(i))) {
          Files.copy(from.get(i), to.get(i));
          to.get(i).toFile().setWritable(true, true);
        }
      }
    } catch (IOException e) {
      passing.close();
      throw new UncheckedIOException(e);
    }
    Store store = opened(copy, Optional.of(passing), false);
    try {
      Schema schema = Schema.of(copy, store.writing);
      if (!schema.isNewest()) {
        schema.migrate();
      }
      return store;
    } catch (RuntimeException e) {
      store.close();
      throw e;
    }
  }

  private static HikariDataSource embedded(Location.Folder location, boolean isForReading) {
    if (!SqliteLibrary.isLoaded()) {
      throw new IllegalStateException("SQLite does not run on this machine");
    }
    SQLiteConfig sqlite = new SQLiteConfig();
    sqlite.setJournalMode(SQLiteConfig.JournalMode.WAL);
    sqlite.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    sqlite.setTransactionMode(
        isForReading
            ? SQLiteConfig.TransactionMode.DEFERRED
            : SQLiteConfig.TransactionMode.IMMEDIATE);
    sqlite.enforceForeignKeys(true);
    // A connection that is opened while the file is away would put an empty one in its place.
    sqlite.resetOpenMode(SQLiteOpenMode.CREATE);
    sqlite.setBusyTimeout(Setting.STORE_BUSY.number());
    HikariConfig config = config();
    if (isForReading) {
      config.setConnectionInitSql("pragma query_only = on");
    } else {
      config.setMaximumPoolSize(1);
    }
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
    }
    // Without a password in the address the driver looks into .pgpass.
    if (!server.password().isEmpty()) {
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

  /** Makes one change, wholly or not at all; a failure undoes it and is thrown on. */
  public <T> T change(Function<JdbcClient, T> work) {
    checkThere();
    await();
    try {
      return Objects.requireNonNull(transactions.execute(status -> work.apply(client)));
    } catch (TransactionSystemException e) {
      throw reason(e);
    } finally {
      turn.unlock();
    }
  }

  private void await() {
    try {
      if (turn.tryLock(Setting.STORE_BUSY.number(), TimeUnit.MILLISECONDS)) {
        return;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    throw new IllegalStateException(
        new SQLiteException("others change it", SQLiteErrorCode.SQLITE_BUSY));
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

  /** Looks something up; inside a change, with what that has changed. */
  public <T> T look(Function<JdbcClient, T> question) {
    return question.apply(TransactionSynchronizationManager.hasResource(writing) ? client : reader);
  }

  /** Looks several things up as they stand at one moment, while others change them. */
  public <T> T snapshot(Function<JdbcClient, T> question) {
    return Objects.requireNonNull(snapshots.execute(status -> question.apply(reader)));
  }

  /** What the engine itself finds damaged in its file; a server looks after its own. */
  public List<String> damage() {
    return switch (location) {
      case Location.Folder folder ->
          look(
              sql ->
                  sql.sql("pragma integrity_check").query(String.class).list().stream()
                      .filter(line -> !line.equals("ok"))
                      .toList());
      case Location.Server server -> List.of();
    };
  }

  /** Where it lies. */
  public Location location() {
    return location;
  }

  @Override
  public void close() {
    reading.close();
    writing.close();
    copy.ifPresent(PassingFolder::close);
  }
}
