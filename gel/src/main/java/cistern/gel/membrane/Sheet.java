package cistern.gel.membrane;

/**
 * The part of a picture that shows the membrane: the area between four straight edges, each a
 * position at the middle of the picture and a slope.
 *
 * @param left column of the left edge at mid-height, and columns per row
 * @param right the same on the right
 * @param top row of the top edge at mid-width, and rows per column
 * @param bottom the same at the bottom
 */
public record Sheet(int width, int height, Edge left, Edge right, Edge top, Edge bottom) {

  /** A straight edge: its place on the middle line of the picture and its slope. */
  public record Edge(double at, double slope) {
    double at(double fromMiddle) {
      return at + slope * fromMiddle;
    }
  }

  /** The whole picture. */
  public static Sheet of(int width, int height) {
    return new Sheet(
        width, height, new Edge(0, 0), new Edge(width, 0), new Edge(0, 0), new Edge(height, 0));
  }

  /** First column on the membrane in a row, inset by a margin in pixels. */
  public int firstColumn(double row, double margin) {
    return (int) Math.max(0, Math.ceil(left.at(row - height / 2.0) + margin));
  }

  /** One past the last column on the membrane in a row, inset by a margin in pixels. */
  public int lastColumn(double row, double margin) {
    return (int) Math.min(width, Math.floor(right.at(row - height / 2.0) - margin));
  }

  /** First row on the membrane in a column, inset by a margin in pixels. */
  public int firstRow(double column, double margin) {
    return (int) Math.max(0, Math.ceil(top.at(column - width / 2.0) + margin));
  }

  /** One past the last row on the membrane in a column, inset by a margin in pixels. */
  public int lastRow(double column, double margin) {
    return (int) Math.min(height, Math.floor(bottom.at(column - width / 2.0) - margin));
  }

  /** Rows of the sheet read as columns. */
  public Sheet toTransposed() {
    return new Sheet(height, width, top, bottom, left, right);
  }
}
