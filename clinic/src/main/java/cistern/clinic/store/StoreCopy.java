package cistern.clinic.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Everything in one store, written to another. A backup is an embedded store, whatever engine it
 * was made from, and can be restored to either.
 */
public final class StoreCopy {

  private static final List<String> REPORT =
      List.of(
          "case_id",
          "number",
          "case_version",
          "at",
          "account",
          "reason",
          "made_by",
          "workup",
          "page",
          "pdf",
          "policy",
          "letter",
          "patient",
          "chart",
          "hash");

  /** The columns by table; a table stands after those that it refers to. */
  private static final SequencedMap<String, List<String>> COLUMNS = columns();

  /** What lists show is not copied but made again: it depends on the program. */
  private static final String SUMMARIES =
      """
      insert into case_summary
        (case_id, version, signed, changed_at, made_by, renew_at, name, person, search, summary)
      select v.case_id, max(v.number),
        coalesce((select max(r.case_version) from report r where r.case_id = v.case_id), 0),
        max(v.at), '', '9999', '', '', '', ''
      from case_version v group by v.case_id
      """;

  private StoreCopy() {}

  private static SequencedMap<String, List<String>> columns() {
    SequencedMap<String, List<String>> all = new LinkedHashMap<>();
    all.put(
        "account",
        List.of(
            "id",
            "name",
            "full_name",
            "role",
            "password",
            "failures",
            "locked_until",
            "is_active",
            "created_at",
            "generation"));
    all.put("one_time_code", List.of("hash", "account", "expires_at", "used_at"));
    all.put("clinic_case", List.of("id", "created_at"));
    all.put("case_version", List.of("case_id", "number", "at", "account", "step", "workup"));
    all.put("report", REPORT);
    all.put("gel_picture", List.of("name", "at", "account", "bytes"));
    all.put("gel_reading", List.of("id", "picture", "lanes", "at", "account", "made_by", "text"));
    all.put(
        "rule_change",
        List.of("number", "at", "account", "rule", "typed", "unit", "source", "reason"));
    all.put("draft", List.of("account", "case_id", "step", "base", "at", "typed"));
    all.put("audit", List.of("number", "at", "account", "action", "subject", "digest", "hash"));
    return Collections.unmodifiableSequencedMap(all);
  }

  /** Whether a store holds nothing yet. */
  public static boolean isEmpty(Store store) {
    return store.look(
        sql ->
            COLUMNS.keySet().stream()
                .allMatch(
                    table ->
                        sql.sql("select count(*) from " + table).query(Long.class).single() == 0));
  }

  /**
   * Writes everything in one store, as it stands at one moment, to an empty one.
   *
   * @return how many rows of each table were written
   */
  public static SequencedMap<String, Long> copy(Store from, Store to) {
    if (!isEmpty(to)) {
      throw new IllegalArgumentException("only an empty store is written to");
    }
    return from.snapshot(source -> to.change(target -> rows(source, target)));
  }

  /** How many rows each table of a store holds. */
  public static SequencedMap<String, Long> counts(Store store) {
    return store.snapshot(
        sql -> {
          SequencedMap<String, Long> counts = new LinkedHashMap<>();
          COLUMNS
              .keySet()
              .forEach(
                  t ->
                      counts.put(
                          t, sql.sql("select count(*) from " + t).query(Long.class).single()));
          return counts;
        });
  }

  /** Counts as a person reads them. */
  public static String words(Map<String, Long> counts) {
    return counts.entrySet().stream()
        .map(e -> "%s: %,d".formatted(e.getKey().replace('_', ' '), e.getValue()))
        .collect(Collectors.joining("; "));
  }

  private static SequencedMap<String, Long> rows(JdbcClient source, JdbcClient target) {
    SequencedMap<String, Long> rows = new LinkedHashMap<>();
    for (Map.Entry<String, List<String>> table : COLUMNS.entrySet()) {
      rows.put(table.getKey(), table(source, target, table.getKey(), table.getValue()));
    }
    target.sql(SUMMARIES).update();
    source
        .sql("select number, hash from audit_head")
        .query(
            (RowCallbackHandler)
                head ->
                    target
                        .sql("update audit_head set number = ?, hash = ?")
                        .params(head.getLong("number"), head.getString("hash"))
                        .update());
    return rows;
  }

  private static long table(
      JdbcClient source, JdbcClient target, String table, List<String> columns) {
    String names = String.join(", ", columns);
    String marks = String.join(", ", Collections.nCopies(columns.size(), "?"));
    String insert = "insert into %s (%s) values (%s)".formatted(table, names, marks);
    long[] rows = {0};
    source
        .sql("select %s from %s".formatted(names, table))
        .query(
            (RowCallbackHandler)
                row -> {
                  List<@Nullable Object> values = new ArrayList<>();
                  for (String column : columns) {
                    values.add(row.getObject(column));
                  }
                  target.sql(insert).params(values).update();
                  rows[0]++;
                });
    return rows[0];
  }
}
