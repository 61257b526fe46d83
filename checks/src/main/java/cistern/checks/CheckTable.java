package cistern.checks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The rows of a whole run, by module, in an order that does not depend on the run.
 *
 * @param rows the rows of each module, by its folder's name; modules without any are left out
 */
record CheckTable(SortedMap<String, List<TableRow>> rows) {

  private static final String HEAD =
      """
      | what | source | tolerance | result |
      | --- | --- | --- | --- |
      """;

  CheckTable {
    rows = new TreeMap<>(rows);
  }

  /**
   * The rows that the tests of every module under a root left behind.
   *
   * @param folder where, inside each module, e.g. {@code target/validation}
   */
  static CheckTable read(Path root, String folder) throws IOException {
    SortedMap<String, List<TableRow>> rows = new TreeMap<>();
    for (Path module : modulesOf(root)) {
      List<TableRow> found = readRows(module.resolve(folder));
      if (!found.isEmpty()) {
        rows.put(module.getFileName().toString(), found);
      }
    }
    return new CheckTable(rows);
  }

  static List<Path> modulesOf(Path root) throws IOException {
    try (Stream<Path> folders = Files.list(root)) {
      return folders.filter(folder -> Files.exists(folder.resolve("pom.xml"))).sorted().toList();
    }
  }

  private static List<TableRow> readRows(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      List<TableRow> rows = new ArrayList<>();
      for (Path file : files.filter(path -> path.toString().endsWith(".tsv")).toList()) {
        rows.add(TableRow.parse(Files.readString(file)));
      }
      rows.sort(Comparator.comparing(TableRow::what).thenComparing(TableRow::source));
      return List.copyOf(rows);
    }
  }

  int size() {
    return rows.values().stream().mapToInt(List::size).sum();
  }

  String toMarkdown() {
    StringBuilder text = new StringBuilder();
    rows.forEach(
        (module, list) -> {
          text.append("\n### ").append(module).append("\n\n").append(HEAD);
          list.forEach(row -> text.append(row.toMarkdown()));
        });
    return text.toString();
  }
}
