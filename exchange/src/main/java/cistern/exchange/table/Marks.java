package cistern.exchange.table;

import cistern.exchange.lab.DecimalMark;
import cistern.exchange.lab.NumberText;
import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
import java.util.List;
import java.util.Optional;

/**
 * How the numbers of one table are written: as told, else as the numbers show that can be read in
 * one way only. Where none shows it, a number that can be read in two ways stays as it is.
 *
 * @param mark of the table's texts
 */
record Marks(DecimalMark mark) {

  static Marks of(List<Row> rows, DecimalMark told) {
    if (told != DecimalMark.UNTOLD) {
      return new Marks(told);
    }
    boolean hasComma = isAny(rows, NumberText::hasDecimalComma);
    boolean hasPoint = isAny(rows, text -> text.matches("[<>]?\\s*\\d+\\.(\\d{1,2}|\\d{4,})"));
    return new Marks(
        hasComma == hasPoint
            ? DecimalMark.UNTOLD
            : hasComma ? DecimalMark.COMMA : DecimalMark.POINT);
  }

  private static boolean isAny(List<Row> rows, java.util.function.Predicate<String> test) {
    return rows.stream()
        .flatMap(row -> row.cells().stream())
        .anyMatch(cell -> !cell.isNumber() && test.test(cell.text()));
  }

  /** The text of a cell with a decimal point; as it is when it is no number or unclear. */
  String plain(Cell cell) {
    if (cell.isNumber()) {
      return cell.text();
    }
    Optional<NumberText> number = NumberText.parse(cell.text(), mark);
    if (number.isEmpty()) {
      return cell.text();
    }
    String sign =
        switch (number.get().kind()) {
          case VALUE -> "";
          case BELOW -> "<";
          case ABOVE -> ">";
          case TITRE -> "1:";
        };
    String rest = number.get().rest().isEmpty() ? "" : " " + number.get().rest();
    return sign + number.get().literal() + rest;
  }
}
