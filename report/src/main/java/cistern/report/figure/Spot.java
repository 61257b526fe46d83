package cistern.report.figure;

/**
 * A place in a figure, in user units from its top left.
 *
 * @param x to the right
 * @param y downwards
 */
public record Spot(double x, double y) {

  /** This place moved. */
  public Spot to(double right, double down) {
    return new Spot(x + right, y + down);
  }
}
