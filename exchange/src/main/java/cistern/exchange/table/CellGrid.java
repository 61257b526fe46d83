package cistern.exchange.table;

import cistern.exchange.lab.LeftOver;
import java.util.List;

/**
 * The cells of a table.
 *
 * @param rows each with its cells; of different lengths
 * @param notes what was noted on the way
 */
record CellGrid(List<Row> rows, List<LeftOver> notes) {

  /** Copies the lists. */
  CellGrid {
    rows = List.copyOf(rows);
    notes = List.copyOf(notes);
  }

  /**
   * A cell.
   *
   * @param text as written
   * @param isNumber whether a workbook holds it as a number, which has a decimal point
   */
  record Cell(String text, boolean isNumber) {

    static final Cell EMPTY = new Cell("", false);

    boolean isBlank() {
      return text.isBlank();
    }
  }

  /**
   * A row.
   *
   * @param number from 1, as a person counts
   * @param cells from the left
   */
  record Row(int number, List<Cell> cells) {

    Row {
      cells = List.copyOf(cells);
    }

    Cell cell(int column) {
      return column < cells.size() ? cells.get(column) : Cell.EMPTY;
    }

    boolean isBlank() {
      return cells.stream().allMatch(Cell::isBlank);
    }

    String place(int column) {
      return "row " + number + ", column " + (column + 1);
    }
  }

  int width() {
    return rows.stream().mapToInt(row -> row.cells().size()).max().orElse(0);
  }
}
