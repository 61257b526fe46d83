package cistern.gel.lanes;

/**
 * The pencil of straight lines along which the lanes of one gel run. A lane that crosses mid-height
 * at column u runs through u + (y − middle) · (slope + spread · (u − centre)); rotation gives the
 * slope, perspective the spread.
 *
 * @param slope columns per row at the centre
 * @param spread change of the slope per column
 * @param centre column to which the slope belongs
 * @param middle row of mid-height
 */
public record Fan(double slope, double spread, double centre, double middle) {

  /** Columns per row of the line through a column at mid-height. */
  public double slopeAt(double column) {
    return slope + spread * (column - centre);
  }

  /** The column of the line through a column at mid-height, in a row. */
  public double column(double atMiddle, double row) {
    return atMiddle + (row - middle) * slopeAt(atMiddle);
  }
}
