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
 * cites {@code a}; empty only where the status says that nothing was looked up.
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
    String line = in.readLine();
    for (int row = 3; line != null; row++) {
      if (!line.isBlank() && !line.startsWith("#")) {
        facts.add(parse(name + ":" + row, line, isKeyed));
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
    Status status =
        Status.parse(cells[3])
            .orElseThrow(() -> new IllegalStateException(place + ": no status " + cells[3]));
    Provenance cited = isKeyed ? Provenance.parse(cells[4], status) : Provenance.ofWords(cells[4]);
    return new Fact(
        cells[0], FactValue.parse(cells[1]), cells[2], status, cited, cells[5], Optional.empty());
  }
}
