package cistern.clinic.cases;

import cistern.clinic.account.Chance;
import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.store.Store;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * All cases with all their versions. A change is a new version, never another content of an old.
 */
public final class Cases {

  private static final String COLUMNS =
      "select case_id, number, at, account, step, workup from case_version ";
  private static final String IS_LAST =
      "number = (select max(l.number) from case_version l where l.case_id = case_version.case_id)";

  private final Store store;
  private final AuditTrail trail;
  private final Clock clock;
  private final Chance chance;

  private Cases(Store store, AuditTrail trail, Clock clock, Chance chance) {
    this.store = store;
    this.trail = trail;
    this.clock = clock;
    this.chance = chance;
  }

  /** The cases of a store. */
  public static Cases of(Store store, AuditTrail trail, Clock clock, Chance chance) {
    return new Cases(store, trail, clock, chance);
  }

  /**
   * A change to a case.
   *
   * @param base the number of the version that was changed
   * @param step what was changed
   * @param workup the whole work-up file after the change
   * @param by who
   */
  public record Change(long base, String step, String workup, String by) {}

  /** Begins a case. */
  public CaseVersion add(String step, String workup, String by) {
    return store.change(
        sql -> {
          String id = chance.identifier();
          String at = now();
          sql.sql("insert into clinic_case (id, created_at) values (?, ?)").params(id, at).update();
          CaseVersion first = new CaseVersion(id, 1, at, by, step, workup);
          insert(sql, first);
          trail.append(sql, new Note(by, Action.CASE_MADE, first.subject(), first.digest()));
          return first;
        });
  }

  /** Saves a change when the case still stands as it did when the change was begun. */
  public Saving save(String caseId, Change change) {
    return store.change(
        sql -> {
          CaseVersion next =
              new CaseVersion(
                  caseId, change.base() + 1, now(), change.by(), change.step(), change.workup());
          CaseVersion current = last(sql, caseId).orElseThrow();
          if (current.number() != change.base() || insert(sql, next) == 0) {
            trail.append(sql, Note.of(change.by(), Action.CHANGE_COLLIDED, caseId));
            return new Saving.Collided(last(sql, caseId).orElseThrow());
          }
          trail.append(
              sql, new Note(change.by(), Action.CASE_CHANGED, next.subject(), next.digest()));
          return new Saving.Kept(next);
        });
  }

  /** Keeps a version unless its number is taken; what lists show of the case is then to be made. */
  private static int insert(JdbcClient sql, CaseVersion version) {
    int kept = insertVersion(sql, version);
    if (kept > 0) {
      sql.sql(
              "insert into case_summary (case_id, version, signed, changed_at, made_by, renew_at,"
                  + " name, person, search, summary) values (?, ?, 0, ?, '', '9999', '', '', '',"
                  + " '') on conflict (case_id) do update set version = excluded.version,"
                  + " changed_at = excluded.changed_at, made_by = ''")
          .params(version.caseId(), version.number(), version.at())
          .update();
    }
    return kept;
  }

  private static int insertVersion(JdbcClient sql, CaseVersion version) {
    return sql.sql(
            "insert into case_version (case_id, number, at, account, step, workup)"
                + " values (?, ?, ?, ?, ?, ?) on conflict do nothing")
        .params(
            version.caseId(),
            version.number(),
            version.at(),
            version.account(),
            version.step(),
            version.workup())
        .update();
  }

  /** A case as it stands, without a note in the trail: for the program itself. */
  public Optional<CaseVersion> find(String caseId) {
    return store.look(sql -> last(sql, caseId));
  }

  private static Optional<CaseVersion> last(JdbcClient sql, String caseId) {
    return sql.sql(COLUMNS + "where case_id = ? order by number desc limit 1")
        .param(caseId)
        .query(CaseVersion.class)
        .optional();
  }

  /** A case as it stands, for a reader whom the trail names. */
  public Optional<CaseVersion> read(String caseId, String reader) {
    return store.change(
        sql -> {
          Optional<CaseVersion> found = last(sql, caseId);
          if (found.isPresent()) {
            trail.append(sql, Note.of(reader, Action.CASE_READ, caseId));
          }
          return found;
        });
  }

  /** Every version of a case, the first first. */
  public List<CaseVersion> versions(String caseId) {
    return store.look(
        sql ->
            sql.sql(COLUMNS + "where case_id = ? order by number")
                .param(caseId)
                .query(CaseVersion.class)
                .list());
  }

  /** One version of a case. */
  public Optional<CaseVersion> version(String caseId, long number) {
    return store.look(
        sql ->
            sql.sql(COLUMNS + "where case_id = ? and number = ?")
                .params(caseId, number)
                .query(CaseVersion.class)
                .optional());
  }

  /** All cases as they stand, the last changed first, for a reader whom the trail names. */
  public List<CaseVersion> list(String reader) {
    listed(reader);
    return store.look(
        sql ->
            sql.sql(COLUMNS + "where " + IS_LAST + " order by at desc, case_id")
                .query(CaseVersion.class)
                .list());
  }

  /** Some cases as they stand, the last changed first, without a note: for the program itself. */
  public List<CaseVersion> lastChanged(int most) {
    return lastChanged(0, most);
  }

  /**
   * The same behind the first of them.
   *
   * @param after how many are left out
   */
  public List<CaseVersion> lastChanged(long after, int most) {
    return store.look(
        sql ->
            sql.sql(
                    "select v.case_id, v.number, v.at, v.account, v.step, v.workup"
                        + " from case_summary s join case_version v"
                        + " on v.case_id = s.case_id and v.number = s.version"
                        + " order by s.changed_at desc, s.case_id limit ? offset ?")
                .params(most, after)
                .query(CaseVersion.class)
                .list());
  }

  /** How many cases there are. */
  public long count() {
    return store.look(
        sql -> sql.sql("select count(*) from clinic_case").query(Long.class).single());
  }

  /**
   * Whether the trail holds that somebody has read a case as it stands, so that looking at it again
   * tells it nothing new.
   */
  public boolean isRead(CaseVersion version, String reader) {
    return store.look(
        sql ->
            sql.sql(
                        "select count(*) from audit where subject = ? and account = ? and action = ?"
                            + " and at >= ?")
                    .params(version.caseId(), reader, Action.CASE_READ.word(), version.at())
                    .query(Long.class)
                    .single()
                > 0);
  }

  /** Notes who looked at a list of cases. */
  public void listed(String reader) {
    store.change(sql -> trail.append(sql, Note.of(reader, Action.LIST_READ, "")));
  }

  /**
   * Some cases as they stand, by their identifiers, the first after one: for the program itself.
   */
  public List<CaseVersion> after(String caseId, int most) {
    return store.look(
        sql ->
            sql.sql(COLUMNS + "where case_id > ? and " + IS_LAST + " order by case_id limit ?")
                .params(caseId, most)
                .query(CaseVersion.class)
                .list());
  }

  /** Notes who had all cases counted, or took the tables of it. */
  public void counted(String reader) {
    store.change(sql -> trail.append(sql, Note.of(reader, Action.CASES_COUNTED, "")));
  }

  /** The digest of every version as it is kept now, by what the audit trail calls it. */
  public static Map<String, String> digests(JdbcClient sql) {
    Map<String, String> digests = new TreeMap<>();
    try (var versions = sql.sql(COLUMNS).query(CaseVersion.class).stream()) {
      versions.forEach(v -> digests.put(v.subject(), v.digest()));
    }
    return digests;
  }

  private String now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
