package cistern.exchange.ucum;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Collectors;

/**
 * Resource tables of units: the common ones reduced beforehand, so that an ordinary file never
 * waits for all of UCUM, and the ways in which units are often miswritten.
 */
final class CommonUnits {

  private static final String HEADER = "unit\tfactor\tdimension";
  private static final String MISWRITTEN_HEADER = "written\tunit";
  private static final String SPELLINGS_HEADER = "written\tunit\tstatus\treference";

  private final SequencedMap<String, Unit> units = new LinkedHashMap<>();
  private final List<Map.Entry<String, String>> miswritten;

  private CommonUnits() {
    rows("units.tsv", HEADER)
        .forEach(r -> units.put(r[0], new Unit(Ratio.parse(r[1]), Dimension.parse(r[2]))));
    miswritten =
        rows("miswritten.tsv", MISWRITTEN_HEADER).stream().map(r -> Map.entry(r[0], r[1])).toList();
  }

  /** The tables, read once. */
  static CommonUnits read() {
    return Tables.READ;
  }

  private static final class Tables {
    private static final CommonUnits READ = new CommonUnits();
  }

  /** The unit of a text, if it is a common one. */
  Optional<Unit> find(String text) {
    return Optional.ofNullable(units.get(text));
  }

  /** The units that laboratories mean by a text, by the declared list of spellings. */
  List<String> spelled(String written) {
    return Spelled.UNITS.getOrDefault(written, List.of());
  }

  /** The list of spellings, read when the first message or table comes. */
  private static final class Spelled {
    private static final Map<String, List<String>> UNITS =
        rows("spellings.tsv", SPELLINGS_HEADER).stream()
            .collect(
                Collectors.groupingBy(
                    r -> r[0], Collectors.mapping(r -> r[1], Collectors.toUnmodifiableList())));
  }

  /** All common units as they are written. */
  List<String> texts() {
    return List.copyOf(units.keySet());
  }

  /** The units that a miswritten one may stand for. */
  List<String> meant(String written) {
    return miswritten.stream()
        .filter(e -> e.getKey().equals(written))
        .map(Map.Entry::getValue)
        .toList();
  }

  private static List<String[]> rows(String resource, String header) {
    try (InputStream in = CommonUnits.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("no table " + resource);
      }
      BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      if (!header.equals(lines.readLine())) {
        throw new IllegalStateException(resource + ": no header");
      }
      return lines.lines().map(line -> line.split("\t", -1)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
