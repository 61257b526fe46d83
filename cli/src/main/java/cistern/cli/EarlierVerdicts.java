package cistern.cli;

import cistern.cohort.CohortMember;
import cistern.exchange.table.CsvRecords;
import cistern.exchange.table.CsvRecords.CsvRecord;
import cistern.finding.FindingCode;
import cistern.report.cohort.CohortChanges.Changed;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The verdicts of an earlier table of interpretations, by work-up and column. */
final class EarlierVerdicts {

  private static final String VERDICT = ".verdict";
  private static final String CRITERIA = "criteria.";

  private final Map<String, Map<String, String>> byId;

  private EarlierVerdicts(Map<String, Map<String, String>> byId) {
    this.byId = byId;
  }

  /** Reads a table; empty, when it has no column {@code id}. */
  static Optional<EarlierVerdicts> read(Path table) throws IOException {
    Map<String, Map<String, String>> byId = new HashMap<>();
    try (BufferedReader reader = Files.newBufferedReader(table)) {
      CsvRecords records = new CsvRecords(reader, ',');
      List<String> head = records.next().map(CsvRecord::cells).orElse(List.of());
      int id = head.indexOf("id");
      if (id < 0) {
        return Optional.empty();
      }
      Optional<CsvRecord> record = records.next();
      while (record.isPresent()) {
        List<String> cells = record.get().cells();
        if (cells.size() > id) {
          byId.put(cells.get(id), verdicts(head, cells));
        }
        record = records.next();
      }
    }
    return Optional.of(new EarlierVerdicts(byId));
  }

  private static Map<String, String> verdicts(List<String> head, List<String> cells) {
    Map<String, String> kept = new HashMap<>();
    for (int i = 0; i < Math.min(head.size(), cells.size()); i++) {
      String column = head.get(i);
      boolean isKept =
          column.endsWith(VERDICT)
              || column.startsWith(CRITERIA)
              || FindingCode.parse(column).isPresent();
      if (isKept) {
        kept.put(column, cells.get(i));
      }
    }
    return kept;
  }

  /** What is said of a member now and was said otherwise; nothing when the table lacks it. */
  List<Changed> changes(CohortMember member) {
    Map<String, String> before = byId.getOrDefault(member.id(), Map.of());
    List<Changed> changes = new ArrayList<>();
    member
        .verdicts()
        .forEach(
            (code, verdict) -> {
              String column = code.code() + VERDICT;
              String then = before.getOrDefault(column, verdict.word());
              if (!then.equals(verdict.word())) {
                String why = why(code, member, before);
                changes.add(new Changed(member.id(), column, then, verdict.word(), why));
              }
            });
    member
        .criteria()
        .forEach(
            (edition, verdict) -> {
              String then = before.getOrDefault(CRITERIA + edition, verdict);
              if (!then.equals(verdict)) {
                changes.add(
                    new Changed(
                        member.id(),
                        CRITERIA + edition,
                        then,
                        verdict,
                        "what goes into the criteria, or their rules, changed"));
              }
            });
    return changes;
  }

  /** Whether the value itself changed, or what it is judged by. */
  private static String why(FindingCode code, CohortMember member, Map<String, String> before) {
    String then = before.getOrDefault(code.code(), "");
    Double now = member.values().get(code);
    String value = now == null ? "" : now.toString();
    if (then.equals(value)) {
      return "the limit or a rule of its verdict changed; the value did not";
    }
    return "the value changed from %s to %s"
        .formatted(then.isEmpty() ? "none" : then, value.isEmpty() ? "none" : value);
  }
}
