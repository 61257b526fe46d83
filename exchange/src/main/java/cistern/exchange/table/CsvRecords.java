package cistern.exchange.table;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The records of a text with separated cells (RFC 4180), one after another, so that a table of any
 * length can be read in little memory.
 */
public final class CsvRecords {

  private static final int END = -1;
  private static final int NOT_READ = -2;

  private final Reader text;
  private final char sign;
  private int line = 1;
  private int ahead = NOT_READ;

  /**
   * Records of a text.
   *
   * @param text buffered
   * @param sign between cells
   */
  public CsvRecords(Reader text, char sign) {
    this.text = text;
    this.sign = sign;
  }

  /**
   * One record.
   *
   * @param line on which it begins, from 1
   * @param raw as written, with its line break
   * @param cells without their quotes
   */
  public record CsvRecord(int line, String raw, List<String> cells) {

    /** Copies the cells. */
    public CsvRecord {
      cells = List.copyOf(cells);
    }

    /** Whether nothing is written in it. */
    public boolean isBlank() {
      return cells.stream().allMatch(String::isBlank);
    }
  }

  private int read() throws IOException {
    int next = ahead == NOT_READ ? text.read() : ahead;
    ahead = NOT_READ;
    return next;
  }

  private int peek() throws IOException {
    if (ahead == NOT_READ) {
      ahead = text.read();
    }
    return ahead;
  }

  /** The next record; empty at the end. */
  public Optional<CsvRecord> next() throws IOException {
    if (peek() == END) {
      return Optional.empty();
    }
    StringBuilder raw = new StringBuilder();
    StringBuilder cell = new StringBuilder();
    List<String> cells = new ArrayList<>();
    int start = line;
    boolean isQuoted = false;
    for (int c = read(); c != END; c = read()) {
      raw.append((char) c);
      line += c == '\n' ? 1 : 0;
      if (isQuoted) {
        isQuoted = quoted(c, raw, cell);
      } else if (c == '"' && cell.toString().isBlank()) {
        cell.setLength(0);
        isQuoted = true;
      } else if (c == sign) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else if (c == '\n') {
        break;
      } else if (c != '\r') {
        cell.append((char) c);
      }
    }
    cells.add(cell.toString());
    return Optional.of(new CsvRecord(start, raw.toString(), cells));
  }

  /** Takes a sign inside quotes; whether the quotes stay open. */
  private boolean quoted(int c, StringBuilder raw, StringBuilder cell) throws IOException {
    if (c != '"') {
      cell.append((char) c);
      return true;
    }
    if (peek() != '"') {
      return false;
    }
    raw.append((char) read());
    cell.append('"');
    return true;
  }
}
