package cistern.clinic.house;

import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.store.Store;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.TreeMap;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Every change of a rule of the house. */
public final class RuleBook {

  private static final String COLUMNS =
      "select number, at, account, rule, typed, unit, source, reason from rule_change ";

  private final Store store;
  private final AuditTrail trail;
  private final Clock clock;

  private RuleBook(Store store, AuditTrail trail, Clock clock) {
    this.store = store;
    this.trail = trail;
    this.clock = clock;
  }

  /** The rules of a store. */
  public static RuleBook of(Store store, AuditTrail trail, Clock clock) {
    return new RuleBook(store, trail, clock);
  }

  /** Every change, the first first. */
  public List<RuleChange> all() {
    return store.look(sql -> sql.sql(COLUMNS + "order by number").query(RuleChange.class).list());
  }

  /** The last change of each rule that is not taken back, in the order in which they came. */
  public List<RuleChange> inForce() {
    SequencedMap<String, RuleChange> last = new LinkedHashMap<>();
    all().forEach(change -> last.putLast(change.rule(), change));
    return last.values().stream().filter(change -> !change.isTakenBack()).toList();
  }

  /** The number of the last change; 0 before the first. */
  public long last() {
    return store.look(RuleBook::last);
  }

  private static long last(JdbcClient sql) {
    return sql.sql("select coalesce(max(number), 0) from rule_change").query(Long.class).single();
  }

  /**
   * Keeps a change when no other came since it was looked at. What lists show of every case is then
   * to be made again.
   *
   * @param typed the change with the number that it is to have; its time is that of keeping it
   * @return what is kept; nothing when somebody was faster
   */
  public Optional<RuleChange> add(RuleChange typed) {
    return store.change(
        sql -> {
          RuleChange change =
              new RuleChange(
                  typed.number(),
                  clock.instant().truncatedTo(ChronoUnit.MILLIS).toString(),
                  typed.account(),
                  typed.rule(),
                  typed.typed(),
                  typed.unit(),
                  typed.source(),
                  typed.reason());
          if (last(sql) + 1 != change.number() || insert(sql, change) == 0) {
            return Optional.empty();
          }
          sql.sql("update case_summary set made_by = ''").update();
          trail.append(
              sql,
              new Note(change.account(), Action.RULE_CHANGED, change.subject(), change.digest()));
          return Optional.of(change);
        });
  }

  private static int insert(JdbcClient sql, RuleChange change) {
    return sql.sql(
            "insert into rule_change (number, at, account, rule, typed, unit, source, reason)"
                + " values (?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing")
        .params(
            change.number(),
            change.at(),
            change.account(),
            change.rule(),
            change.typed(),
            change.unit(),
            change.source(),
            change.reason())
        .update();
  }

  /** The digest of every change as it is kept now, by what the audit trail calls it. */
  public static Map<String, String> digests(JdbcClient sql) {
    Map<String, String> digests = new TreeMap<>();
    sql.sql(COLUMNS)
        .query(RuleChange.class)
        .list()
        .forEach(change -> digests.put(change.subject(), change.digest()));
    return digests;
  }
}
