package cistern.clinic.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Everything in one store, written to another. A backup is an embedded store, whatever engine it
 * was made from, and can be restored to either.
 */
public final class StoreCopy {

  /** The columns by table; a table stands after those that it refers to. */
  private static final SequencedMap<String, List<String>> COLUMNS = columns();

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
            "created_at"));
    all.put("one_time_code", List.of("hash", "account", "expires_at", "used_at"));
    all.put("clinic_case", List.of("id", "created_at"));
    all.put("case_version", List.of("case_id", "number", "at", "account", "step", "workup"));
    all.put(
        "report",
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
            "hash"));
    all.put("gel_picture", List.of("name", "at", "account", "bytes"));
    all.put("gel_reading", List.of("id", "picture", "lanes", "at", "account", "made_by", "text"));
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
   * Writes everything in one store to an empty one, while the first is in use; changes to it wait.
   *
   * @return how many rows were written
   */
  public static long copy(Store from, Store to) {
    if (!isEmpty(to)) {
      throw new IllegalArgumentException("only an empty store is written to");
    }
    return from.change(
        source -> {
          source.sql("update audit_head set number = number where one = 1").update();
          return to.change(target -> rows(source, target));
        });
  }

  private static long rows(JdbcClient source, JdbcClient target) {
    long rows = 0;
    for (Map.Entry<String, List<String>> table : COLUMNS.entrySet()) {
      rows += table(source, target, table.getKey(), table.getValue());
    }
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
