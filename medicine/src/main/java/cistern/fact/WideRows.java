package cistern.fact;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The rows of a wide table, {@code row status reference place} and then a column for each fact that
 * a row may hold, headed {@code name} or {@code name (unit)}. A filled cell is the fact {@code
 * row.name}; {@code value @status} when a single cell is better or worse supported than its row.
 *
 * @param columns the facts of a row
 */
record WideRows(List<Column> columns) {

  static final String HEADER = "row\tstatus\treference\tplace\t";

  private static final int FIXED = 4;
  private static final Pattern HEAD = Pattern.compile("(\\S+)(?: \\((.+)\\))?");
  private static final Pattern CELL = Pattern.compile("(.*?)(?: @([a-z-]+))?");

  /**
   * One fact that a row may hold.
   *
   * @param name the last part of its key
   * @param unit UCUM; empty for words
   */
  record Column(String name, String unit) {}

  static WideRows of(String header) {
    List<Column> columns = new ArrayList<>();
    String[] heads = header.split("\t", -1);
    for (int i = FIXED; i < heads.length; i++) {
      Matcher head = HEAD.matcher(heads[i]);
      if (head.matches()) {
        columns.add(new Column(head.group(1), Optional.ofNullable(head.group(2)).orElse("")));
      }
    }
    return new WideRows(columns);
  }

  List<Fact> parse(String place, String line) {
    String[] cells = line.split("\t", -1);
    if (cells.length != FIXED + columns.size()) {
      throw new IllegalStateException(
          place + ": a row has " + (FIXED + columns.size()) + " cells, this has " + cells.length);
    }
    List<Fact> facts = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      Matcher cell = CELL.matcher(cells[FIXED + i]);
      if (cell.matches() && !cell.group(1).isEmpty()) {
        Status status =
            FactTable.status(place, Optional.ofNullable(cell.group(2)).orElse(cells[1]));
        facts.add(
            new Fact(
                cells[0] + "." + columns.get(i).name(),
                FactValue.parse(cell.group(1)),
                columns.get(i).unit(),
                status,
                Provenance.parse(cells[2], status),
                cells[3],
                Optional.empty()));
      }
    }
    return facts;
  }
}
