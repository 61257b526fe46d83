package cistern.exchange.table;

import cistern.exchange.lab.DecimalMark;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.NumberText;
import cistern.exchange.table.CellGrid.Row;
import cistern.exchange.ucum.Spellings;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Where the headings of a table stand and what they say. Up to three rows of headings are read
 * together: a heading that spans columns says its part for each of them.
 */
final class TableLayout {

  private static final int LOOKED_AT = 30;
  private static final int DEEPEST = 3;
  private static final int LEAST_WEIGHT = 3;

  private final List<Row> rows;
  private final int first;
  private final int depth;
  private final List<Heading> headings;
  private final Map<String, Integer> columns = new HashMap<>();
  private final List<Integer> fluidColumns = new ArrayList<>();

  /**
   * A layout; which column holds what is asked of every row and told once.
   *
   * @param rows all rows of the table
   * @param first the index of the first row of headings
   * @param depth how many rows they take
   * @param headings one a column
   */
  private TableLayout(List<Row> rows, int first, int depth, List<Heading> headings) {
    this.rows = rows;
    this.first = first;
    this.depth = depth;
    this.headings = List.copyOf(headings);
    for (int i = 0; i < headings.size(); i++) {
      Heading heading = headings.get(i);
      if (heading.fluids().isEmpty() && heading.subject().isPresent()) {
        columns.putIfAbsent(heading.subject().get(), i);
      }
      if (heading.isFluid()) {
        fluidColumns.add(i);
      }
    }
  }

  /** One heading a column. */
  List<Heading> headings() {
    return headings;
  }

  /** The number in the file of the first row of headings. */
  int headingRow() {
    return rows.get(first).number();
  }

  /** The layout that explains most; empty when no row looks like headings. */
  static Optional<TableLayout> of(List<Row> rows, Spellings spellings, LocalMapping mapping) {
    Optional<TableLayout> best = Optional.empty();
    for (int first = 0; first < Math.min(LOOKED_AT, rows.size()); first++) {
      if (isKeyed(rows.get(first))) {
        continue;
      }
      for (int depth = 1; depth <= DEEPEST && first + depth < rows.size(); depth++) {
        if (holdsValue(rows.get(first + depth - 1), spellings, mapping)) {
          break;
        }
        TableLayout layout =
            new TableLayout(rows, first, depth, headings(rows, first, depth, spellings, mapping));
        if (layout.weight() > best.map(TableLayout::weight).orElse(LEAST_WEIGHT)) {
          best = Optional.of(layout);
        }
      }
    }
    return best.filter(TableLayout::hasValues);
  }

  /** Whether a row says fields with their texts, as the head of a page does. */
  private static boolean isKeyed(Row row) {
    return row.cells().stream().anyMatch(cell -> cell.text().contains(":"))
        && !KeyedLines.fields(row).isEmpty();
  }

  /** Whether a number stands in a row, perhaps with its unit: then it is a result, no headings. */
  private static boolean holdsValue(Row row, Spellings spellings, LocalMapping mapping) {
    return row.cells().stream()
        .map(CellGrid.Cell::text)
        .filter(text -> mapping.heading(text).isEmpty())
        .anyMatch(
            text ->
                Stream.of(DecimalMark.COMMA, DecimalMark.POINT)
                    .flatMap(mark -> NumberText.parse(text, mark).stream())
                    .anyMatch(n -> n.rest().isEmpty() || spellings.isUnit(n.rest())));
  }

  /**
   * The layout of a table whose first row says of every column what it is: there is nothing to
   * search. Empty for any other.
   */
  static Optional<TableLayout> ofPlainHeadings(
      List<Row> rows, Spellings spellings, LocalMapping mapping) {
    if (rows.size() < 2 || rows.getFirst().cells().size() < 2) {
      return Optional.empty();
    }
    List<Heading> headings = new ArrayList<>();
    for (CellGrid.Cell cell : rows.getFirst().cells()) {
      Heading heading = Heading.of(cell.text(), spellings, mapping);
      if (heading.weight() == 0) {
        return Optional.empty();
      }
      headings.add(heading);
    }
    return Optional.of(new TableLayout(rows, 0, 1, headings)).filter(TableLayout::hasValues);
  }

  private static List<Heading> headings(
      List<Row> rows, int first, int depth, Spellings spellings, LocalMapping mapping) {
    Row last = rows.get(first + depth - 1);
    int width =
        IntStream.range(first, first + depth).map(r -> rows.get(r).cells().size()).max().orElse(0);
    List<Heading> headings = new ArrayList<>();
    for (int column = 0; column < width; column++) {
      List<String> parts = new ArrayList<>();
      for (int row = first; row < first + depth; row++) {
        String text = spanning(rows.get(row), column, row < first + depth - 1);
        if (!text.isBlank() && !parts.contains(text)) {
          parts.add(text);
        }
      }
      Heading whole = Heading.of(String.join(" ", parts), spellings, mapping);
      headings.add(
          whole.weight() > 0 || parts.size() < 2
              ? whole
              : field(last.cell(column).text(), spellings, mapping).orElse(whole));
    }
    return headings;
  }

  /** A heading that names a field where what spans it says nothing with it. */
  private static Optional<Heading> field(String text, Spellings spellings, LocalMapping mapping) {
    return Optional.of(Heading.of(text, spellings, mapping))
        .filter(alone -> alone.weight() > 0 && !alone.isMeasured());
  }

  /** The text of a cell, or of the nearest one to its left where a heading spans columns. */
  private static String spanning(Row row, int column, boolean isGroup) {
    int from = column;
    while (isGroup && from > 0 && row.cell(from).isBlank()) {
      from--;
    }
    return row.cell(from).text();
  }

  private int weight() {
    return headings.stream().mapToInt(Heading::weight).sum();
  }

  /** Whether there are columns from which results can come. */
  private boolean hasValues() {
    boolean isLong =
        headings.stream().anyMatch(h -> h.isField("test") || h.isField("code"))
            && headings.stream().anyMatch(h -> h.isField("value"));
    return isLong || headings.stream().anyMatch(h -> h.isMeasured() || h.isFluid());
  }

  /** The rows under the headings. */
  List<Row> body() {
    return rows.subList(first + depth, rows.size());
  }

  /** The rows above the headings. */
  List<Row> above() {
    return rows.subList(0, first);
  }

  /** The column of a field; the first one when several say so. */
  Optional<Integer> column(String field) {
    return Optional.ofNullable(columns.get(field));
  }

  /** The columns of fluids, each with any analyte's values. */
  List<Integer> fluidColumns() {
    return Collections.unmodifiableList(fluidColumns);
  }

  /** Whether each row is one analyte or one result. */
  boolean isByTest() {
    return !fluidColumns().isEmpty() || column("value").isPresent();
  }

  /** The column of the names of tests: as its heading says, else the first. */
  Optional<Integer> testColumn() {
    Optional<Integer> named = column("test");
    boolean isFirstFree = !headings.isEmpty() && headings.getFirst().weight() == 0;
    return named.or(
        () -> isByTest() && isFirstFree && column("code").isEmpty() ? Optional.of(0) : named);
  }
}
