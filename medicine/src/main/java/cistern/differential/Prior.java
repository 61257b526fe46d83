package cistern.differential;

import cistern.measurement.Answer;

/**
 * How likely MS was before the puncture, as the user states it.
 *
 * @param low the lower end of the range, 0 to 1
 * @param high the upper end, not below the lower
 * @param usesMri whether the imaging has already been counted in it
 */
public record Prior(double low, double high, Answer usesMri) {

  /** Checks the range. */
  public Prior {
    if (!(low >= 0) || !(high <= 1) || low > high) {
      throw new IllegalArgumentException("a prior range lies between 0 and 1, low end first");
    }
  }

  /** The middle of the range. */
  public double middle() {
    return (low + high) / 2;
  }
}
