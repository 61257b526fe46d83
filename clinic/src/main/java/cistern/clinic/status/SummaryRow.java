package cistern.clinic.status;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.setting.Setting;
import cistern.statement.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.stream.Collectors;
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
          search(open, question));
    } catch (UnreadableCase e) {
      Instant again =
          medicine.clock().instant().plus(Duration.ofMinutes(Setting.SUMMARY_MINUTES.number()));
      Summary unreadable = Summary.unreadable(version.caseId(), version.at());
      return new SummaryRow(version, signed, unreadable, again.toString(), "", "");
    }
  }

  /** What is searched: name, person, question, days, and the words of the answer. */
  private static String search(OpenCase open, String question) {
    String answer =
        open.interpretation().statements().stream()
            .limit(1)
            .map(Statement::text)
            .collect(Collectors.joining());
    String drawn =
        open.workup().panel().csf().at().map(at -> at.toLocalDate().toString()).orElse("");
    return String.join(
            "\n", open.name(), Identity.of(open.file()).toText(), question, drawn, answer)
        .toLowerCase(Locale.ROOT);
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

  /**
   * The day reads the rows by place and due time: the name of the duty is only the key of its row,
   * and changed_at is there because the table asks for it.
   */
  private void keepDuties(JdbcClient sql) {
    sql.sql("delete from case_duty where case_id = ?").param(version.caseId()).update();
    summary
        .waiting()
        .forEach(
            waits ->
                sql.sql(
                        "insert into case_duty (case_id, duty, place, changed_at, until, due_at)"
                            + " values (?, ?, ?, ?, ?, ?)")
                    .params(
                        version.caseId(),
                        waits.duty().name(),
                        Summaries.place(waits.duty()),
                        version.at(),
                        waits.duty() == Duty.EMERGENCY ? NEVER : until(),
                        waits.dueAt())
                    .update());
  }

  /** Until when it is looked at for what waits: always while it is not signed as it stands. */
  private String until() {
    return signed == version.number()
        ? Instant.parse(version.at()).plus(Duration.ofDays(Setting.DAY_DAYS.number())).toString()
        : NEVER;
  }
}
