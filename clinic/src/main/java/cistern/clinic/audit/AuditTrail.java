package cistern.clinic.audit;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The audit trail. An entry is written in the transaction of what it tells of; the row of the head
 * is locked first, so that entries have one order and no gap.
 */
public final class AuditTrail {

  private static final String COLUMNS =
      "select number, at, account, action, subject, digest, hash from audit ";
  private static final String OLDEST_FIRST = " order by number limit ?";
  private static final String NEWEST_FIRST = " order by number desc limit ?";

  private final Clock clock;

  private AuditTrail(Clock clock) {
    this.clock = clock;
  }

  /** A trail whose entries bear the time of a clock. */
  public static AuditTrail of(Clock clock) {
    return new AuditTrail(clock);
  }

  /**
   * What is noted.
   *
   * @param account who; empty for the program itself
   * @param action what
   * @param subject the case or account it was about; may be empty
   * @param digest of what was written; empty when nothing was
   */
  public record Note(String account, Action action, String subject, String digest) {

    /** A note of something that wrote nothing. */
    public static Note of(String account, Action action, String subject) {
      return new Note(account, action, subject, "");
    }
  }

  /** Adds an entry, inside the transaction of the change that it tells of. */
  public AuditEntry append(JdbcClient sql, Note note) {
    long number =
        sql.sql("update audit_head set number = number + 1 where one = 1 returning number")
            .query(Long.class)
            .single();
    String before =
        sql.sql("select hash from audit_head where one = 1").query(String.class).single();
    AuditEntry open =
        new AuditEntry(
            number,
            clock.instant().truncatedTo(ChronoUnit.MILLIS).toString(),
            note.account(),
            note.action().word(),
            note.subject(),
            note.digest(),
            "");
    String hash = open.hashAfter(before);
    sql.sql(
            "insert into audit (number, at, account, action, subject, digest, hash)"
                + " values (?, ?, ?, ?, ?, ?, ?)")
        .params(
            number, open.at(), note.account(), open.action(), note.subject(), note.digest(), hash)
        .update();
    sql.sql("update audit_head set hash = ? where one = 1").param(hash).update();
    return new AuditEntry(
        number, open.at(), note.account(), open.action(), note.subject(), note.digest(), hash);
  }

  /** The entries from a number on, in order. */
  public static List<AuditEntry> from(JdbcClient sql, long first, int most) {
    return sql.sql(COLUMNS + "where number >= ?" + OLDEST_FIRST)
        .params(first, most)
        .query(AuditTrail::row)
        .list();
  }

  /**
   * Which entries are looked for; an empty text stands for any.
   *
   * @param about a case, with its versions and reports
   * @param person who did it, or whose account it was about
   */
  public record Filter(String about, String person) {

    /** Every entry. */
    public static final Filter NONE = new Filter("", "");

    private static final String IS_LOOKED_FOR =
        "(? = '' or subject = ? or subject like ? escape '!')"
            + " and (? = '' or account = ? or subject = ?)";

    private List<Object> parameters() {
      String inside = about.replaceAll("([!%_])", "!$1") + "/%";
      return List.of(about, about, inside, person, person, person);
    }
  }

  /** The entry of a hash, if there is one. */
  public static Optional<AuditEntry> withHash(JdbcClient sql, String hash) {
    return sql.sql(COLUMNS + "where hash = ?").param(hash).query(AuditTrail::row).optional();
  }

  /** The last entries, the newest first. */
  public static List<AuditEntry> last(JdbcClient sql, int most) {
    return before(sql, Filter.NONE, Long.MAX_VALUE, most);
  }

  /** The entries before a number, the newest first. */
  public static List<AuditEntry> before(JdbcClient sql, Filter filter, long number, int most) {
    return sql.sql(COLUMNS + "where number < ? and " + Filter.IS_LOOKED_FOR + NEWEST_FIRST)
        .param(number)
        .params(filter.parameters())
        .param(most)
        .query(AuditTrail::row)
        .list();
  }

  /** The entries that follow a number, the newest first. */
  public static List<AuditEntry> after(JdbcClient sql, Filter filter, long number, int most) {
    return sql.sql(COLUMNS + "where number > ? and " + Filter.IS_LOOKED_FOR + OLDEST_FIRST)
        .param(number)
        .params(filter.parameters())
        .param(most)
        .query(AuditTrail::row)
        .list()
        .reversed();
  }

  private static AuditEntry row(ResultSet row, int index) throws SQLException {
    return new AuditEntry(
        row.getLong("number"),
        row.getString("at"),
        row.getString("account"),
        row.getString("action"),
        row.getString("subject"),
        row.getString("digest"),
        row.getString("hash"));
  }
}
