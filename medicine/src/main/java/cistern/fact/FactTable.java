package cistern.fact;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One resource table of facts: tab-separated, a {@code # version} line, a header line {@code key
 * value unit status reference place}, then a row a fact. The reference is a key of the
 * bibliography, several with {@code ;} between them; {@code a via b} was seen in {@code b}, which
 * cites {@code a}; empty only where the status says that nothing was looked up. A header line
 * {@code row status reference place …} begins a wide part, whose rows hold several facts ({@link
 * WideRows}).
 *
 * @param name the table's name
 * @param version the table's version, from its first line
 * @param facts the rows in the order of the file
 */
public record FactTable(String name, String version, List<Fact> facts) {

  private static final String HEADER = "key\tvalue\tunit\tstatus\treference\tplace";

  /** The header of a table whose sources are words and not yet keys of the bibliography. */
  private static final String WORDED = "key\tvalue\tunit\tstatus\tsource\tplace";

  private static final String VERSION = "# version ";

  /** Copies the rows. */
  public FactTable {
    facts = List.copyOf(facts);
  }

  /**
   * Reads the resource {@code facts.tsv}-like table beside a class.
   *
   * @throws IllegalStateException when the table is missing or malformed: a fault of the program
   */
  public static FactTable read(Class<?> beside, String resource) {
    try (InputStream in = beside.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("no fact table " + resource);
      }
      return read(resource, new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static FactTable read(String name, BufferedReader in) throws IOException {
    String first = String.valueOf(in.readLine());
    String header = String.valueOf(in.readLine());
    boolean isKeyed = header.equals(HEADER);
    if (!first.startsWith(VERSION) || !(isKeyed || header.equals(WORDED))) {
      throw new IllegalStateException(name + ": no version or header line");
    }
    List<Fact> facts = new ArrayList<>();
    Optional<WideRows> wide = Optional.empty();
    String line = in.readLine();
    for (int row = 3; line != null; row++) {
      String place = name + ":" + row;
      if (line.startsWith(WideRows.HEADER)) {
        wide = Optional.of(WideRows.of(line, isKeyed));
      } else if (!line.isBlank() && !line.startsWith("#")) {
        facts.addAll(
            wide.isPresent()
                ? wide.get().parse(place, line)
                : List.of(parse(place, line, isKeyed)));
      }
      line = in.readLine();
    }
    return new FactTable(name, first.substring(VERSION.length()).strip(), facts);
  }

  private static Fact parse(String place, String line, boolean isKeyed) {
    String[] cells = line.split("\t", -1);
    if (cells.length != 6) {
      throw new IllegalStateException(place + ": a fact has six cells, this has " + cells.length);
    }
    Status status = status(place, cells[3]);
    Provenance cited = cited(cells[4], status, isKeyed);
    return new Fact(
        cells[0], FactValue.parse(cells[1]), cells[2], status, cited, cells[5], Optional.empty());
  }

  static Status status(String place, String word) {
    return Status.parse(word)
        .orElseThrow(() -> new IllegalStateException(place + ": no status " + word));
  }

  static Provenance cited(String cell, Status status, boolean isKeyed) {
    return isKeyed ? Provenance.parse(cell, status) : Provenance.ofWords(cell);
  }
}
