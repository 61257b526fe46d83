package cistern.cohortjob;

import cistern.cohortjob.Blocks.Lines;
import cistern.exchange.table.CsvRecords;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Iterator;

/** The lines of one division of a file, some at a time; a row of a table is never parted. */
final class LineBlocks implements Iterator<Block> {

  /** Rows that are read together: few enough for memory, enough to share the headings. */
  private static final int ROWS = 256;

  private final Lines of;
  private final int division;
  private final Iterator<String> lines;
  private long line;

  LineBlocks(Lines of, int division, Iterator<String> lines) {
    this.of = of;
    this.division = division;
    this.lines = lines;
    if (of.isHeadingWithin() && division == 0 && lines.hasNext()) {
      lines.next();
      line = 1;
    }
  }

  @Override
  public boolean hasNext() {
    return lines.hasNext();
  }

  @Override
  public Block next() {
    long first = line;
    StringBuilder text = new StringBuilder();
    boolean isOpen = false;
    for (int i = 0; i < ROWS && lines.hasNext(); i++) {
      isOpen = row(text);
    }
    LinePlace at = new LinePlace(of.number(), division, first);
    return new Block(at, line, of.file().name(), of.heading(), text.toString(), isOpen);
  }

  /** Takes one row with all of its lines; whether its last cell is still open at the end. */
  private boolean row(StringBuilder text) {
    int start = text.length();
    boolean isOpen;
    do {
      String next = lines.next();
      line++;
      text.append(next).append('\n');
      isOpen = !of.heading().isEmpty() && isOpen(text, start, next);
    } while (isOpen && lines.hasNext());
    return isOpen;
  }

  private boolean isOpen(StringBuilder text, int start, String last) {
    if (text.indexOf("\"", start) < 0) {
      return false;
    }
    boolean isFirst = start + last.length() + 1 == text.length();
    if (!isFirst && last.indexOf('"') < 0) {
      return true;
    }
    try {
      CsvRecords records = new CsvRecords(new StringReader(text.substring(start)), of.sign());
      return records.next().filter(r -> r.cells().getLast().endsWith("\n")).isPresent();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
