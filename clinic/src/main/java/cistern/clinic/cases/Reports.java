package cistern.clinic.cases;

import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.cases.SignedReport.Content;
import cistern.clinic.cases.SignedReport.Papers;
import cistern.clinic.store.Store;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** All signed reports. */
public final class Reports {

  private static final String COLUMNS =
      "select case_id, number, case_version, at, account, reason, made_by, workup, page, pdf,"
          + " policy, letter, patient, chart, hash from report ";

  private final Store store;
  private final AuditTrail trail;
  private final Clock clock;

  private Reports(Store store, AuditTrail trail, Clock clock) {
    this.store = store;
    this.trail = trail;
    this.clock = clock;
  }

  /** The reports of a store. */
  public static Reports of(Store store, AuditTrail trail, Clock clock) {
    return new Reports(store, trail, clock);
  }

  /** Why a case was not signed. */
  public enum NotSigned {
    CHANGED(
        "The case was changed since this page was opened. Read it again before you sign; nothing"
            + " was signed."),
    REASON("This case has a signed report: say why it is amended. Nothing was signed.");

    private final String text;

    NotSigned(String text) {
      this.text = text;
    }

    /** The sentence for the person. */
    public String text() {
      return text;
    }
  }

  /** What came of signing. */
  public sealed interface Signing {
    /**
     * It is signed.
     *
     * @param report as it is kept
     */
    record Signed(SignedReport report) implements Signing {}

    /**
     * It is not.
     *
     * @param reason why
     */
    record Refused(NotSigned reason) implements Signing {}
  }

  /**
   * Signs one version of a case when it is the last; a later report than the first has a reason.
   */
  public Signing sign(CaseVersion version, Content content, String reason, String by) {
    return store.change(
        sql -> {
          long last = max(sql, "case_version", version.caseId());
          long number = max(sql, "report", version.caseId()) + 1;
          if (last != version.number()) {
            return new Signing.Refused(NotSigned.CHANGED);
          }
          if (number > 1 && reason.isBlank()) {
            return new Signing.Refused(NotSigned.REASON);
          }
          SignedReport open =
              new SignedReport(
                  version.caseId(),
                  number,
                  version.number(),
                  clock.instant().truncatedTo(ChronoUnit.MILLIS).toString(),
                  by,
                  reason.strip(),
                  content,
                  "");
          SignedReport report = open.withHash(open.computedHash());
          if (insert(sql, report) == 0) {
            return new Signing.Refused(NotSigned.CHANGED);
          }
          sql.sql("update case_summary set signed = ?, made_by = '' where case_id = ?")
              .params(report.caseVersion(), report.caseId())
              .update();
          trail.append(sql, new Note(by, Action.REPORT_SIGNED, report.subject(), report.hash()));
          return new Signing.Signed(report);
        });
  }

  private static long max(JdbcClient sql, String table, String caseId) {
    return sql.sql("select coalesce(max(number), 0) from " + table + " where case_id = ?")
        .param(caseId)
        .query(Long.class)
        .single();
  }

  private static int insert(JdbcClient sql, SignedReport report) {
    Content content = report.content();
    List<@Nullable Object> values =
        new ArrayList<>(
            List.of(
                report.caseId(),
                report.number(),
                report.caseVersion(),
                report.at(),
                report.account(),
                report.reason(),
                content.madeBy(),
                content.workup(),
                content.page(),
                content.pdf()));
    values.add(content.papers().map(Papers::policy).orElse(null));
    values.add(content.papers().map(Papers::letter).orElse(null));
    values.add(content.papers().map(Papers::patient).orElse(null));
    values.add(content.papers().map(Papers::chart).orElse(null));
    values.add(report.hash());
    return sql.sql(
            "insert into report (case_id, number, case_version, at, account, reason, made_by,"
                + " workup, page, pdf, policy, letter, patient, chart, hash)"
                + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing")
        .params(values)
        .update();
  }

  /** The reports of a case, the first first. */
  public List<SignedReport> of(String caseId) {
    return store.look(
        sql ->
            sql.sql(COLUMNS + "where case_id = ? order by number")
                .param(caseId)
                .query(Reports::row)
                .list());
  }

  /** One report, for a reader whom the trail names. */
  public Optional<SignedReport> read(String caseId, long number, String reader) {
    return store.change(
        sql -> {
          Optional<SignedReport> report =
              sql.sql(COLUMNS + "where case_id = ? and number = ?")
                  .params(caseId, number)
                  .query(Reports::row)
                  .optional();
          if (report.isPresent()) {
            trail.append(sql, Note.of(reader, Action.REPORT_READ, caseId));
          }
          return report;
        });
  }

  /** The version of a case that was signed last, if one was. */
  public OptionalLong signedVersion(String caseId) {
    long signed = store.look(sql -> signedVersion(sql, caseId));
    return signed == 0 ? OptionalLong.empty() : OptionalLong.of(signed);
  }

  private static long signedVersion(JdbcClient sql, String caseId) {
    return sql.sql("select coalesce(max(case_version), 0) from report where case_id = ?")
        .param(caseId)
        .query(Long.class)
        .single();
  }

  /** The hash of every report as it is kept now, by what the audit trail calls it. */
  public static Map<String, String> digests(JdbcClient sql) {
    Map<String, String> digests = new TreeMap<>();
    try (var reports = sql.sql(COLUMNS).query(Reports::row).stream()) {
      reports.forEach(
          r ->
              digests.put(
                  r.subject(), r.hash().equals(r.computedHash()) ? r.hash() : "not its hash"));
    }
    return digests;
  }

  private static SignedReport row(ResultSet row, int index) throws SQLException {
    return new SignedReport(
        row.getString("case_id"),
        row.getLong("number"),
        row.getLong("case_version"),
        row.getString("at"),
        row.getString("account"),
        row.getString("reason"),
        new Content(
            row.getString("made_by"),
            row.getString("workup"),
            row.getString("page"),
            row.getBytes("pdf"),
            papers(row)),
        row.getString("hash"));
  }

  private static Optional<Papers> papers(ResultSet row) throws SQLException {
    byte[] letter = row.getBytes("letter");
    return letter == null
        ? Optional.empty()
        : Optional.of(
            new Papers(
                row.getString("policy"),
                letter,
                row.getBytes("patient"),
                Objects.requireNonNullElse(row.getString("chart"), "")));
  }
}
