package cistern.exchange.table;

import cistern.exchange.lab.Names;
import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Lines such as {@code Patient ID: p-7}: a field and its text. */
final class KeyedLines {

  private static final Set<String> FIELDS =
      Set.of("person.id", "id", "name", "ageYears", "sex", "birthDate", "csf.at", "serum.at", "at");

  private KeyedLines() {}

  /**
   * A field of a line.
   *
   * @param name of the field
   * @param text behind it
   */
  record Field(String name, String text) {}

  /** The field of a line, if it is one. */
  static Optional<Field> field(Row row) {
    List<Cell> cells = row.cells().stream().filter(c -> !c.isBlank()).toList();
    if (cells.size() == 2) {
      Optional<String> name = Names.find(cells.getFirst().text()).filter(FIELDS::contains);
      if (name.isPresent()) {
        return name.map(n -> new Field(n, cells.get(1).text()));
      }
    }
    String line = String.join(" ", cells.stream().map(Cell::text).toList());
    int colon = line.indexOf(':');
    return colon < 1
        ? Optional.empty()
        : Names.find(line.substring(0, colon))
            .filter(FIELDS::contains)
            .map(n -> new Field(n, line.substring(colon + 1).strip()))
            .filter(f -> !f.text().isEmpty());
  }

  /** The fields of some lines; of two of a name the first. */
  static Map<String, String> fields(List<Row> rows) {
    Map<String, String> fields = new LinkedHashMap<>();
    rows.forEach(row -> field(row).ifPresent(f -> fields.putIfAbsent(f.name(), f.text())));
    return fields;
  }
}
