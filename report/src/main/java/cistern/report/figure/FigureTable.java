package cistern.report.figure;

import java.util.List;

/**
 * The numbers of a figure as rows, for those who can't or won't read the drawing.
 *
 * @param headings of the columns
 * @param rows each as long as the headings
 */
public record FigureTable(List<String> headings, List<List<String>> rows) {

  /** Copies the cells and checks that every row is complete. */
  public FigureTable {
    headings = List.copyOf(headings);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<String> row : rows) {
      if (row.size() != headings.size()) {
        throw new IllegalArgumentException("a row has as many cells as there are headings");
      }
    }
  }
}
