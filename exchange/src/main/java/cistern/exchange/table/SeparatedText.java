package cistern.exchange.table;

import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
import cistern.exchange.table.CsvRecords.CsvRecord;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Cells set apart by a sign (RFC 4180, with any of the usual signs), or by two blanks and more as
 * in text that was copied out of a page.
 */
final class SeparatedText {

  private static final List<Character> SIGNS = List.of('\t', ';', ',', '|');
  private static final int LINES_LOOKED_AT = 25;

  /** The least width of a column, in signs. */
  private static final int COLUMN = 8;

  private SeparatedText() {}

  /** The cells of a text by each sign that may part them, the likeliest first. */
  static List<List<Row>> readings(String text) {
    Optional<Character> told = told(text);
    String body = told.isPresent() ? text.substring(text.indexOf('\n') + 1) : text;
    int first = told.isPresent() ? 2 : 1;
    List<List<Row>> readings =
        new ArrayList<>(
            told.map(Stream::of)
                .orElseGet(SIGNS::stream)
                .map(sign -> rows(body, sign, first))
                .filter(SeparatedText::isTable)
                .toList());
    if (told.isEmpty()) {
      readings.add(aligned(text));
    }
    return readings;
  }

  /** The sign that the first line of a spreadsheet's export names: {@code sep=;}. */
  private static Optional<Character> told(String text) {
    return text.matches("(?s)sep=[^\\w\\s]\\r?\\n.*|sep=\\t\\r?\\n.*")
        ? Optional.of(text.charAt(4))
        : Optional.empty();
  }

  private static boolean isTable(List<Row> rows) {
    long wide = rows.stream().limit(LINES_LOOKED_AT).filter(r -> r.cells().size() > 1).count();
    return wide > 0;
  }

  private static List<Row> rows(String text, char sign, int first) {
    CsvRecords records = new CsvRecords(new StringReader(text), sign);
    List<Row> rows = new ArrayList<>();
    try {
      for (Optional<CsvRecord> r = records.next(); r.isPresent(); r = records.next()) {
        List<Cell> cells = r.get().cells().stream().map(SeparatedText::cell).toList();
        rows.add(new Row(first - 1 + r.get().line(), cells));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  private static Cell cell(String text) {
    return new Cell(text.replace('\u00a0', ' ').strip(), false);
  }

  /**
   * Lines whose cells stand apart by two blanks or more, or by a tab. A line that begins far to the
   * right of the others leaves its first column blank.
   */
  static List<Row> aligned(String text) {
    List<Row> rows = new ArrayList<>();
    List<String> lines =
        Stream.of(text.split("\\R", -1)).map(line -> line.replace('\u00a0', ' ')).toList();
    int margin =
        lines.stream()
            .filter(line -> !line.isBlank())
            .mapToInt(SeparatedText::indent)
            .min()
            .orElse(0);
    for (int i = 0; i < lines.size(); i++) {
      List<Cell> cells = new ArrayList<>();
      if (indent(lines.get(i)) - margin >= COLUMN) {
        cells.add(Cell.EMPTY);
      }
      Stream.of(lines.get(i).strip().split("\\s{2,}|\\t", -1))
          .map(SeparatedText::cell)
          .forEach(cells::add);
      rows.add(new Row(i + 1, cells));
    }
    return rows;
  }

  private static int indent(String line) {
    return line.length() - line.stripLeading().length();
  }
}
