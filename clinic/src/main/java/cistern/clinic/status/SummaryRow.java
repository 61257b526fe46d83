package cistern.clinic.status;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.setting.Setting;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.OptionalLong;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * A summary on its way into the store, with what finds it.
 *
 * @param version of which it was made
 * @param signed the version that was signed last; 0 for none
 * @param summary what lists show
 * @param renewAt when a time in it has come, in UTC; far away when none will
 * @param person the identifier of the person; empty without one
 * @param search what is searched, in small letters
 */
record SummaryRow(
    CaseVersion version,
    long signed,
    Summary summary,
    String renewAt,
    String person,
    String search) {

  /** After every time that a file may hold. */
  static final String NEVER = "9999";

  static SummaryRow of(CaseVersion version, long signed, Medicine medicine) {
    try {
      OpenCase open = OpenCase.of(version, medicine);
      CaseStatus status =
          CaseStatus.of(
              open, medicine, signed == 0 ? OptionalLong.empty() : OptionalLong.of(signed));
      String person = open.workup().panel().person().id().orElse("");
      String question = open.workup().remarks().question().orElse("");
      return new SummaryRow(
          version,
          signed,
          Summary.of(open, status),
          status.renewAt().map(OffsetDateTime::toInstant).map(Instant::toString).orElse(NEVER),
          person,
          String.join("\n", open.name(), person, question).toLowerCase(Locale.ROOT));
    } catch (UnreadableCase e) {
      Instant again =
          medicine.clock().instant().plus(Duration.ofMinutes(Setting.SUMMARY_MINUTES.number()));
      Summary unreadable = Summary.unreadable(version.caseId(), version.at());
      return new SummaryRow(version, signed, unreadable, again.toString(), "", "");
    }
  }

  /** Keeps it, unless the case was changed or signed meanwhile. */
  void keep(JdbcClient sql, String madeBy) {
    int kept =
        sql.sql(
                "update case_summary set made_by = ?, renew_at = ?, name = ?, person = ?,"
                    + " search = ?, summary = ? where case_id = ? and version = ? and signed = ?")
            .params(
                madeBy,
                renewAt,
                summary.name(),
                person,
                search,
                summary.toText(),
                version.caseId(),
                version.number(),
                signed)
            .update();
    if (kept > 0) {
      keepDuties(sql);
    }
  }

  private void keepDuties(JdbcClient sql) {
    sql.sql("delete from case_duty where case_id = ?").param(version.caseId()).update();
    summary
        .duties()
        .forEach(
            duty ->
                sql.sql(
                        "insert into case_duty (case_id, duty, changed_at, until)"
                            + " values (?, ?, ?, ?)")
                    .params(version.caseId(), duty.name(), version.at(), until())
                    .update());
  }

  /** Until when it is looked at for what waits: always while it is not signed as it stands. */
  private String until() {
    return signed == version.number()
        ? Instant.parse(version.at()).plus(Duration.ofDays(Setting.DAY_DAYS.number())).toString()
        : NEVER;
  }
}
