package cistern.exchange.table;

import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
import cistern.exchange.table.SheetParts.Format;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** The cells of one sheet. */
final class SheetReader {

  private static final int WIDEST = 2_000;
  private static final int DIGITS_SHOWN = 15;
  private static final double SECONDS_A_DAY = 86_400;
  private static final Pattern MERGED =
      Pattern.compile("(?<column>[A-Z]{1,3})(?<from>\\d{1,7}):[A-Z]{1,3}(?<to>\\d{1,7})");

  private final List<String> texts;
  private final List<Format> formats;
  private final boolean isFrom1904;
  private final int most;

  SheetReader(List<String> texts, List<Format> formats, boolean isFrom1904, int most) {
    this.texts = List.copyOf(texts);
    this.formats = List.copyOf(formats);
    this.isFrom1904 = isFrom1904;
    this.most = most;
  }

  List<Row> rows(byte[] part) throws XMLStreamException {
    Map<Integer, List<Cell>> rows = new TreeMap<>();
    XMLStreamReader xml = SheetParts.open(part);
    int row = 0;
    int column = 0;
    int count = 0;
    while (part.length > 0 && xml.hasNext()) {
      int event = xml.next();
      SheetParts.refuseDoctype(event);
      if (event != XMLStreamConstants.START_ELEMENT) {
        continue;
      }
      if (xml.getLocalName().equals("row")) {
        String number = SheetParts.attribute(xml, "r");
        row = number.matches("\\d{1,7}") ? Integer.parseInt(number) : row + 1;
        column = 0;
      } else if (xml.getLocalName().equals("c")) {
        String reference = SheetParts.attribute(xml, "r");
        column = reference.matches("[A-Z]{1,3}\\d+") ? column(reference) : column + 1;
        if (++count > most || column > WIDEST) {
          throw new XMLStreamException("more cells than a table of results has");
        }
        put(rows.computeIfAbsent(row, r -> new ArrayList<>()), column, cell(xml));
      } else if (xml.getLocalName().equals("mergeCell")) {
        fill(rows, SheetParts.attribute(xml, "ref"));
      }
    }
    return rows.entrySet().stream().map(e -> new Row(e.getKey(), e.getValue())).toList();
  }

  /** Says the text of a cell that spans rows in each of them, as far as there are rows. */
  private static void fill(Map<Integer, List<Cell>> rows, String range) {
    Matcher merged = MERGED.matcher(range);
    if (!merged.matches()) {
      return;
    }
    int column = column(merged.group("column"));
    int from = Integer.parseInt(merged.group("from"));
    List<Cell> first = rows.getOrDefault(from, List.of());
    Cell said = column <= first.size() ? first.get(column - 1) : Cell.EMPTY;
    rows.forEach(
        (row, cells) -> {
          if (row > from && row <= Integer.parseInt(merged.group("to")) && !said.isBlank()) {
            put(cells, column, said);
          }
        });
  }

  private static void put(List<Cell> cells, int column, Cell cell) {
    if (cells.size() < column) {
      cells.addAll(Collections.nCopies(column - cells.size(), Cell.EMPTY));
    }
    cells.set(column - 1, cell);
  }

  private static int column(String reference) {
    int column = 0;
    for (int i = 0; i < reference.length(); i++) {
      char c = reference.charAt(i);
      column = Character.isDigit(c) ? column : column * 26 + (c - 'A' + 1);
    }
    return column;
  }

  /** The cell at whose start the stream stands; read to its end. */
  private Cell cell(XMLStreamReader xml) throws XMLStreamException {
    String type = SheetParts.attribute(xml, "t");
    String style = SheetParts.attribute(xml, "s");
    StringBuilder value = new StringBuilder();
    boolean isTaken = false;
    while (xml.hasNext()) {
      int event = xml.next();
      SheetParts.refuseDoctype(event);
      if (event == XMLStreamConstants.START_ELEMENT) {
        isTaken = xml.getLocalName().equals("v") || xml.getLocalName().equals("t");
      } else if (event == XMLStreamConstants.CHARACTERS && isTaken) {
        value.append(xml.getText());
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        isTaken = false;
        if (xml.getLocalName().equals("c")) {
          break;
        }
      }
    }
    return cell(type, style, value.toString().strip());
  }

  private Cell cell(String type, String style, String value) {
    return switch (type) {
      case "s" -> new Cell(shared(value), false);
      case "inlineStr", "str", "d" -> new Cell(value.replace('\u00a0', ' ').strip(), false);
      case "b" -> new Cell(value.equals("1") ? "yes" : "no", false);
      case "e" -> Cell.EMPTY;
      default -> value.isEmpty() ? Cell.EMPTY : number(style, value);
    };
  }

  private String shared(String value) {
    int index = value.matches("\\d{1,8}") ? Integer.parseInt(value) : -1;
    return index >= 0 && index < texts.size()
        ? texts.get(index).replace('\u00a0', ' ').strip()
        : "";
  }

  private Cell number(String style, String value) {
    int index = style.matches("\\d{1,6}") ? Integer.parseInt(style) : 0;
    Format format = index < formats.size() ? formats.get(index) : Format.PLAIN;
    BigDecimal number = shortest(value);
    return switch (format) {
      case PLAIN -> new Cell(number.toPlainString(), true);
      case PERCENT -> new Cell(number.movePointRight(2).toPlainString() + " %", true);
      case DATE -> new Cell(time(number.doubleValue()), false);
    };
  }

  /**
   * The number that a person sees: a workbook may hold the double nearest to it with 17 digits, and
   * shows 15 of them at most.
   */
  private static BigDecimal shortest(String value) {
    if (value.length() > 40) {
      throw new IllegalArgumentException("a number longer than any double");
    }
    BigDecimal written = new BigDecimal(value);
    if (Math.abs(written.scale()) > 400) {
      throw new IllegalArgumentException("a number beyond any double");
    }
    return written.precision() > DIGITS_SHOWN
        ? written.round(new MathContext(DIGITS_SHOWN)).stripTrailingZeros()
        : written;
  }

  /** Days since the workbook's beginning as a date, with the time when there is one. */
  private String time(double days) {
    if (!(days >= 1 && days < 3_000_000)) {
      return "";
    }
    LocalDate start = isFrom1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
    long whole = (long) Math.floor(days);
    long seconds = Math.round((days - whole) * SECONDS_A_DAY);
    LocalDateTime time = start.plusDays(whole).atStartOfDay().plusSeconds(seconds);
    return seconds == 0 ? time.toLocalDate().toString() : time.toString();
  }
}
