package cistern.exchange.table;

import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
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
    List<Row> rows = new ArrayList<>();
    List<Cell> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean isQuoted = false;
    int line = first;
    int start = first;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (isQuoted) {
        if (c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
          cell.append('"');
          i++;
        } else if (c == '"') {
          isQuoted = false;
        } else {
          cell.append(c);
        }
        line += c == '\n' ? 1 : 0;
      } else if (c == '"' && cell.toString().isBlank()) {
        cell.setLength(0);
        isQuoted = true;
      } else if (c == sign) {
        cells.add(cell(cell));
      } else if (c == '\n') {
        cells.add(cell(cell));
        rows.add(new Row(start, cells));
        cells = new ArrayList<>();
        line++;
        start = line;
      } else {
        cell.append(c);
      }
    }
    if (!cells.isEmpty() || cell.length() > 0) {
      cells.add(cell(cell));
      rows.add(new Row(start, cells));
    }
    return rows;
  }

  private static Cell cell(StringBuilder text) {
    Cell cell = new Cell(text.toString().replace('\u00a0', ' ').strip(), false);
    text.setLength(0);
    return cell;
  }

  /** Lines whose cells stand apart by two blanks or more, or by a tab. */
  static List<Row> aligned(String text) {
    List<Row> rows = new ArrayList<>();
    String[] lines = text.split("\\R", -1);
    for (int i = 0; i < lines.length; i++) {
      List<Cell> cells =
          Stream.of(lines[i].replace('\u00a0', ' ').strip().split("\\s{2,}|\\t", -1))
              .map(c -> new Cell(c.strip(), false))
              .toList();
      rows.add(new Row(i + 1, cells));
    }
    return rows;
  }
}
