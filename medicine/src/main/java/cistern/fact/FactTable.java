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
    if (!first.startsWith(VERSION) || !header.equals(HEADER)) {
      throw new IllegalStateException(name + ": no version or header line");
    }
    List<Fact> facts = new ArrayList<>();
    Optional<WideRows> wide = Optional.empty();
    String line = in.readLine();
    for (int row = 3; line != null; row++) {
      String place = name + ":" + row;
      if (line.startsWith(WideRows.HEADER)) {
        wide = Optional.of(WideRows.of(line));
      } else if (!line.isBlank() && !line.startsWith("#")) {
        facts.addAll(
            wide.isPresent() ? wide.get().parse(place, line) : List.of(parse(place, line)));
      }
      line = in.readLine();
    }
    return new FactTable(name, first.substring(VERSION.length()).strip(), facts);
  }

  private static Fact parse(String place, String line) {
    String[] cells = line.split("\t", -1);
    if (cells.length != 6) {
      throw new IllegalStateException(place + ": a fact has six cells, this has " + cells.length);
    }
    Status status = status(place, cells[3]);
    Provenance cited = Provenance.parse(cells[4], status);
    return new Fact(
        cells[0], FactValue.parse(cells[1]), cells[2], status, cited, cells[5], Optional.empty());
  }

  static Status status(String place, String word) {
    return Status.parse(word)
        .orElseThrow(() -> new IllegalStateException(place + ": no status " + word));
  }
}
