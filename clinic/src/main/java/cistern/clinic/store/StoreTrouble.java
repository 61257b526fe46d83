package cistern.clinic.store;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What keeps a store from working, in words for the person who waits. */
public enum StoreTrouble {
  FULL(
      "The disk that holds the cases is full. Nothing was changed and nothing is damaged: free some"
          + " space, then save again."),
  READ_ONLY(
      "The store may be read but not written. Nothing was changed: allow the program to write to"
          + " its folder, then save again."),
  BUSY(
      "Another change is still being written. Nothing of yours was changed: wait a moment, then"
          + " save again."),
  GONE(
      "The database cannot be reached. Nothing was changed: when it is back, save again; the"
          + " program reconnects by itself."),
  DAMAGED(
      "The store cannot be read: its file is damaged or not one of this program. Restore the last"
          + " backup.");

  private final String text;

  StoreTrouble(String text) {
    this.text = text;
  }

  /** What happened, what is safe, and what to do. */
  public String text() {
    return text;
  }

  /** The trouble behind a failure; nothing when it is a fault of the program. */
  public static Optional<StoreTrouble> of(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      Optional<StoreTrouble> trouble =
          switch (cause) {
            case SQLiteException sqlite -> ofSqlite(sqlite.getResultCode());
            case SQLTransientConnectionException gone -> Optional.of(GONE);
            case SQLException sql -> ofState(String.valueOf(sql.getSQLState()));
            default -> Optional.empty();
          };
      if (trouble.isPresent()) {
        return trouble;
      }
    }
    return Optional.empty();
  }

  /** By the primary result code, which is the low byte of an extended one. */
  private static Optional<StoreTrouble> ofSqlite(SQLiteErrorCode extended) {
    int primary = extended.code & 0xFF;
    if (primary == SQLiteErrorCode.SQLITE_FULL.code) {
      return Optional.of(FULL);
    }
    if (primary == SQLiteErrorCode.SQLITE_READONLY.code
        || primary == SQLiteErrorCode.SQLITE_PERM.code) {
      return Optional.of(READ_ONLY);
    }
    if (primary == SQLiteErrorCode.SQLITE_BUSY.code
        || primary == SQLiteErrorCode.SQLITE_LOCKED.code) {
      return Optional.of(BUSY);
    }
    if (primary == SQLiteErrorCode.SQLITE_CANTOPEN.code
        || primary == SQLiteErrorCode.SQLITE_IOERR.code) {
      return Optional.of(GONE);
    }
    return primary == SQLiteErrorCode.SQLITE_CORRUPT.code
            || primary == SQLiteErrorCode.SQLITE_NOTADB.code
        ? Optional.of(DAMAGED)
        : Optional.empty();
  }

  /** By the class of the SQL state (PostgreSQL documentation, appendix A). */
  private static Optional<StoreTrouble> ofState(String state) {
    if (state.equals("53100")) {
      return Optional.of(FULL);
    }
    if (state.equals("25006")) {
      return Optional.of(READ_ONLY);
    }
    if (state.startsWith("40")) {
      return Optional.of(BUSY);
    }
    return state.startsWith("08") || state.startsWith("57P") ? Optional.of(GONE) : Optional.empty();
  }
}
