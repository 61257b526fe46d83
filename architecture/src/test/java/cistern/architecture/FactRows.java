package cistern.architecture;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The fact tables of every module: each row has a key of its own, a status that exists, a source,
 * and a unit when it is a number. House style, rule 3.
 */
final class FactRows {

  /** The first line of columns, by which a table of facts is known from other tables. */
  private static final String COLUMNS = "key\tvalue\tunit\tstatus\treference\tplace";

  /** The same for a table whose sources are words and not yet keys of the bibliography. */
  private static final String WORDED = "key\tvalue\tunit\tstatus\tsource\tplace";

  /** The first line of a part whose rows hold several facts. */
  private static final String WIDE = "row\tstatus\t";

  private static final int WIDE_FIXED = 4;

  /** The statuses of what was not looked up: a reference is welcome there, and not asked for. */
  private static final Set<String> UNSOURCED = Set.of("common-practice", "project-rule", "memory");

  /** The words of a status, strongest first. */
  private static final Set<String> STATUSES =
      Set.of(
          "read", "derived", "second-hand", "local", "common-practice", "project-rule", "memory");

  private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9].*");

  private final Map<String, String> placeOfKey = new HashMap<>();
  private final List<String> violations = new ArrayList<>();

  private FactRows() {}

  static boolean isTable(Path file) {
    return file.toString().endsWith(".tsv") && isTable(SourceRules.linesOf(file));
  }

  private static boolean isTable(List<String> lines) {
    return lines.contains(COLUMNS) || lines.contains(WORDED);
  }

  static List<String> check(List<Path> tables) {
    FactRows rows = new FactRows();
    tables.forEach(rows::checkTable);
    return List.copyOf(rows.violations);
  }

  private void checkTable(Path table) {
    List<String> lines = SourceRules.linesOf(table);
    List<String> wide = List.of();
    for (int line = 0; line < lines.size(); line++) {
      String text = lines.get(line);
      String place = table.getFileName() + ":" + (line + 1);
      List<String> cells = List.of(text.split("\t", -1));
      if (text.startsWith(WIDE)) {
        wide = cells;
      } else if (!text.isBlank() && !text.startsWith("#") && !isTable(List.of(text))) {
        if (wide.isEmpty()) {
          checkRow(place, cells);
        } else {
          checkWide(place, cells, wide);
        }
      }
    }
  }

  /** A row of several facts: each filled cell is checked as a fact of its own. */
  private void checkWide(String place, List<String> cells, List<String> heads) {
    if (cells.size() != heads.size()) {
      violations.add(place + ": has " + cells.size() + " cells");
      return;
    }
    for (int i = WIDE_FIXED; i < cells.size(); i++) {
      String value = cells.get(i).replaceFirst(" @[a-z-]+$", "");
      if (!value.isEmpty()) {
        String[] head = heads.get(i).split(" [(]", -1);
        String unit = head.length > 1 ? head[1] : "";
        checkRow(
            place,
            List.of(
                cells.getFirst() + "." + head[0],
                value,
                unit,
                cells.get(1),
                cells.get(2),
                cells.get(3)));
      }
    }
  }

  private void checkRow(String place, List<String> cells) {
    if (cells.size() != COLUMNS.split("\t", -1).length) {
      violations.add(place + ": has " + cells.size() + " cells");
      return;
    }
    String before = placeOfKey.putIfAbsent(cells.getFirst(), place);
    if (before != null) {
      violations.add(place + ": its key stands at " + before + " too");
    }
    if (!STATUSES.contains(cells.get(3))) {
      violations.add(place + ": no status: " + cells.get(3));
    }
    boolean isUnsourced = UNSOURCED.contains(cells.get(3));
    boolean isCited = !cells.get(4).isBlank();
    if (isCited ? cells.get(5).isBlank() : !isUnsourced) {
      violations.add(place + ": no source, or no place in it");
    }
    if (NUMBER.matcher(cells.get(1)).matches() && cells.get(2).isBlank()) {
      violations.add(place + ": a number without a unit");
    }
  }
}
