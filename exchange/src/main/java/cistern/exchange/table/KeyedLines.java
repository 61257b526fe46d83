package cistern.exchange.table;

import cistern.exchange.lab.Names;
import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lines such as {@code Patient ID: p-7}: fields and their texts. */
final class KeyedLines {

  /** The field of a line that says what everything under it was measured in. */
  static final String FLUID = "fluid";

  private static final Set<String> FIELDS =
      Set.of(
          "person.id",
          "id",
          "name",
          "ageYears",
          "sex",
          "birthDate",
          "csf.at",
          "serum.at",
          "at",
          FLUID);

  private static final String GAP = "  ";

  /** What stands behind "Patient:" and is no identifier: a family name and a given one. */
  private static final Pattern PERSON_NAME =
      Pattern.compile("\\p{L}[\\p{L}'.-]*,?( \\p{L}[\\p{L}'.-]*)+");

  /** Not the one within a time. */
  private static final Pattern COLON = Pattern.compile(":(?=\\s|$)");

  private KeyedLines() {}

  /**
   * A field of a line.
   *
   * @param name of the field
   * @param text behind it
   */
  record Field(String name, String text) {}

  /** The fields of a line, which may hold several; none when it is another line. */
  static List<Field> fields(Row row) {
    List<Cell> cells = row.cells().stream().filter(c -> !c.isBlank()).toList();
    if (cells.size() == 2) {
      Optional<String> name = Names.find(cells.getFirst().text()).filter(FIELDS::contains);
      if (name.isPresent()) {
        return List.of(new Field(name.get(), cells.get(1).text()));
      }
    }
    String line = String.join(GAP, cells.stream().map(Cell::text).toList());
    List<Label> labels = labels(line);
    List<Field> fields = new ArrayList<>();
    for (int i = 0; i < labels.size(); i++) {
      int end = i + 1 < labels.size() ? labels.get(i + 1).from() : line.length();
      String text = line.substring(labels.get(i).to(), end).strip().split(GAP, 2)[0];
      String name = labels.get(i).name();
      if (FIELDS.contains(name) && !text.isEmpty()) {
        boolean isName = name.equals("person.id") && PERSON_NAME.matcher(text).matches();
        fields.add(new Field(isName ? "name" : name, text));
      }
    }
    return fields;
  }

  /** The words before a colon; the name is empty when they name no field. */
  private record Label(int from, int to, String name) {}

  private static List<Label> labels(String line) {
    List<Label> labels = new ArrayList<>();
    Matcher colon = COLON.matcher(line);
    while (colon.find()) {
      int before = labels.isEmpty() ? 0 : labels.getLast().to();
      String words = line.substring(before, colon.start());
      labels.add(label(before, colon.start(), words));
    }
    return labels;
  }

  /** The field of a label; a name that stands alone is the person's here, a test's in a table. */
  private static Optional<String> name(String label) {
    return label.strip().equalsIgnoreCase("name")
        ? Optional.of("name")
        : Names.find(label).filter(FIELDS::contains);
  }

  /** The longest ending of some words that names a field, else the last word. */
  private static Label label(int offset, int end, String words) {
    int last = 0;
    for (int at = 0; at < words.length(); at++) {
      boolean isStart = at == 0 || words.charAt(at - 1) == ' ';
      if (isStart && words.charAt(at) != ' ') {
        Optional<String> name = name(words.substring(at));
        if (name.isPresent()) {
          return new Label(offset + at, end + 1, name.get());
        }
        last = at;
      }
    }
    return new Label(offset + last, end + 1, "");
  }

  /** The fields of some lines; of two of a name the first, and no fluid where two are named. */
  static Map<String, String> fields(List<Row> rows) {
    Map<String, String> fields = new LinkedHashMap<>();
    Set<String> fluids = new HashSet<>();
    for (Row row : rows) {
      for (Field field : fields(row)) {
        fields.putIfAbsent(field.name(), field.text());
        if (field.name().equals(FLUID)) {
          fluids.add(field.text());
        }
      }
    }
    if (fluids.size() > 1) {
      fields.remove(FLUID);
    }
    return fields;
  }
}
