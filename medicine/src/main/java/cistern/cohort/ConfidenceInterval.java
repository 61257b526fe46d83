package cistern.cohort;

/**
 * Two ends between which a figure of a cohort lies.
 *
 * @param lower the lower end, in the unit of the figure
 * @param upper the upper end, not under the lower one
 */
public record ConfidenceInterval(double lower, double upper) {

  /** Checks the order of the ends. */
  public ConfidenceInterval {
    if (!(lower <= upper)) {
      throw new IllegalArgumentException("the ends of an interval are in order");
    }
  }

  /** Whether a number lies between the ends or on one. */
  public boolean holds(double value) {
    return lower <= value && value <= upper;
  }
}
