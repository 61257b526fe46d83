package cistern.clinic.paste;

import cistern.clinic.paste.PasteWords.FluidHead;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * A table whose head names fluids: one analyte a row, one fluid a column. A unit stands in the
 * cell, in the head of its column, in a column behind it, or in the only column of units.
 *
 * @param separator between cells, a regular expression
 * @param heads as they were pasted
 * @param columns the columns of fluids
 */
record PastedTable(String separator, List<String> heads, List<Column> columns) {

  /** Cells set apart by spaces: an empty one cannot be seen, so that every row must be full. */
  private static final String SPACES = " {2,}";

  private static final List<String> SEPARATORS = List.of("\t", ";", "\\|", SPACES);

  PastedTable {
    heads = List.copyOf(heads);
    columns = List.copyOf(columns);
  }

  /**
   * The column of a fluid.
   *
   * @param index of its cells
   * @param in the fluid
   * @param unit in its head; nothing when none stands there
   * @param unitColumn where the unit stands in each row, if it does
   */
  record Column(int index, Compartment in, String unit, OptionalInt unitColumn) {}

  /** The table of a head; nothing when the line is none. */
  static Optional<PastedTable> of(String line, Predicate<String> isUnit) {
    return SEPARATORS.stream()
        .map(separator -> of(line, separator, isUnit))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private static Optional<PastedTable> of(String line, String separator, Predicate<String> isUnit) {
    List<String> heads = cells(line, separator);
    List<Integer> units =
        IntStream.range(0, heads.size())
            .filter(i -> PasteWords.isUnitColumn(heads.get(i)))
            .boxed()
            .toList();
    List<Column> columns = new ArrayList<>();
    for (int i = 1; i < heads.size(); i++) {
      Optional<FluidHead> fluid = PasteWords.fluid(heads.get(i));
      if (fluid.isPresent()) {
        String unit = ucum(fluid.get().rest());
        if (!unit.isEmpty() && !isUnit.test(unit)) {
          return Optional.empty();
        }
        columns.add(new Column(i, fluid.get().in(), unit, unitColumn(units, i)));
      }
    }
    boolean isOwn = columns.stream().map(Column::in).distinct().count() == columns.size();
    return columns.isEmpty() || !isOwn || isResult(heads)
        ? Optional.empty()
        : Optional.of(new PastedTable(separator, heads, columns));
  }

  /** Whether the cells are those of one result: they begin with its name, or hold its number. */
  private static boolean isResult(List<String> heads) {
    return PasteWords.analyte(heads.getFirst()).isPresent()
        || PasteWords.sample(heads.getFirst()).isPresent()
        || heads.stream()
            .filter(h -> PasteWords.fluid(h).isEmpty())
            .anyMatch(h -> h.matches(".*[0-9].*"));
  }

  /** The column of units behind a column, or the only one. */
  private static OptionalInt unitColumn(List<Integer> units, int index) {
    if (units.size() == 1) {
      return OptionalInt.of(units.getFirst());
    }
    return units.contains(index + 1) ? OptionalInt.of(index + 1) : OptionalInt.empty();
  }

  private static List<String> cells(String line, String separator) {
    return List.of(line.split(separator, -1)).stream().map(String::strip).toList();
  }

  static String ucum(String unit) {
    return unit.replace('µ', 'u').replace('μ', 'u');
  }

  /** The heads of columns that are not known: nothing is taken from them. */
  List<String> unknown() {
    return IntStream.range(1, heads.size())
        .filter(i -> columns.stream().noneMatch(c -> c.index() == i))
        .mapToObj(heads::get)
        .filter(h -> !PasteWords.isUnitColumn(h) && !PasteWords.isOtherColumn(h))
        .toList();
  }

  /** Whether a line has cells as the table has; another line is none of its rows. */
  boolean isRow(String line) {
    return cells(line, separator).size() > 1;
  }

  /**
   * What a row says, a result for each fluid.
   *
   * @param isComma whether the block has decimal commas
   */
  List<PastedLine> read(String line, boolean isComma) {
    List<String> cells = cells(line, separator);
    boolean isFull = cells.size() == heads.size();
    boolean isOver = cells.stream().skip(heads.size()).anyMatch(c -> !c.isEmpty());
    if (isOver || (separator.equals(SPACES) && !isFull)) {
      return List.of(
          new PastedLine.NotUnderstood(line, "it has other cells than the head of the table"));
    }
    Optional<Analyte> analyte = PasteWords.analyte(cells.getFirst());
    if (analyte.isEmpty()) {
      return List.of(new PastedLine.NotUnderstood(line, "this name is not known here"));
    }
    return columns.stream()
        .filter(c -> c.index() < cells.size() && !isEmpty(cells.get(c.index())))
        .map(c -> result(line, cells, c, new Sample(analyte.get(), c.in()), isComma))
        .toList();
  }

  private static boolean isEmpty(String cell) {
    return cell.isEmpty() || cell.matches("[-–—]+|n/?a|\\.");
  }

  private static PastedLine result(
      String line, List<String> cells, Column column, Sample sample, boolean isComma) {
    return switch (PastedValue.read(cells.get(column.index()), isComma)) {
      case PastedValue.Reading.Unclear unclear ->
          new PastedLine.NotUnderstood(line, sample.term() + ": " + unclear.reason());
      case PastedValue.Reading.Clear clear -> {
        List<String> units = new ArrayList<>(List.of(ucum(clear.value().unit()), column.unit()));
        column.unitColumn().ifPresent(i -> units.add(i < cells.size() ? ucum(cells.get(i)) : ""));
        List<String> said = units.stream().filter(u -> !u.isEmpty()).distinct().toList();
        yield said.size() == 1
            ? new PastedLine.Understood(
                line, sample, clear.value().sign() + clear.value().number() + " " + said.getFirst())
            : new PastedLine.NotUnderstood(
                line,
                sample.term()
                    + (said.isEmpty()
                        ? ": no unit"
                        : ": two units, " + String.join(" and ", said)));
      }
    };
  }
}
