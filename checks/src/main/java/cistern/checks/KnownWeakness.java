package cistern.checks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A weakness of some versions of a library that is publicly known.
 *
 * @param coordinates group and name; a star at the end stands for any
 * @param from the first version that has it; empty for the first of all
 * @param before the first later version that has it no more
 * @param id under which it is known
 */
record KnownWeakness(String coordinates, String from, String before, String id) {

  private static final Pattern PART = Pattern.compile("\\d+|[A-Za-z]+");

  /** Every row of a table: coordinates, from, before, id. */
  static List<KnownWeakness> read(Path table) throws IOException {
    return Files.readAllLines(table, StandardCharsets.UTF_8).stream()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .skip(1)
        .map(line -> line.split("\t", -1))
        .map(cells -> new KnownWeakness(cells[0], cells[1], cells[2], cells[3]))
        .toList();
  }

  /** Whether a library has it. */
  boolean isOf(Component component) {
    boolean isNamed =
        coordinates.endsWith("*")
            ? component.coordinates().startsWith(coordinates.substring(0, coordinates.length() - 1))
            : component.coordinates().equals(coordinates);
    return isNamed
        && compare(component.version(), from) >= 0
        && compare(component.version(), before) < 0;
  }

  /** Versions in their order: numbers by size, and a word (rc, M) before none. */
  static int compare(String one, String other) {
    List<String> a = parts(one);
    List<String> b = parts(other);
    for (int i = 0; i < Math.max(a.size(), b.size()); i++) {
      int order = comparePart(i < a.size() ? a.get(i) : "", i < b.size() ? b.get(i) : "");
      if (order != 0) {
        return order;
      }
    }
    return 0;
  }

  private static int comparePart(String one, String other) {
    boolean isNumber = isNumber(one) && isNumber(other);
    return isNumber
        ? Long.compare(number(one), number(other))
        : Integer.compare(rank(one), rank(other)) != 0
            ? Integer.compare(rank(one), rank(other))
            : one.compareToIgnoreCase(other);
  }

  /** A missing part counts as zero. */
  private static boolean isNumber(String part) {
    return part.isEmpty() || Character.isDigit(part.charAt(0));
  }

  private static long number(String part) {
    return part.isEmpty() ? 0 : Long.parseLong(part);
  }

  private static int rank(String part) {
    return isNumber(part) ? 1 : 0;
  }

  private static List<String> parts(String version) {
    List<String> parts = new ArrayList<>();
    Matcher matcher = PART.matcher(version);
    while (matcher.find()) {
      parts.add(matcher.group());
    }
    return parts;
  }
}
