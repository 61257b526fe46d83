package cistern.report.figure;

/**
 * Equal steps for equal differences.
 *
 * @param from the first value
 * @param to the last value
 * @param start the place of the first value
 * @param end the place of the last value
 */
public record LinearScale(double from, double to, double start, double end) implements Scale {

  /** Checks the order of the values. */
  public LinearScale {
    if (!(from < to)) {
      throw new IllegalArgumentException("a scale rises");
    }
  }

  @Override
  public double at(double value) {
    double share = (Math.clamp(value, from, to) - from) / (to - from);
    return start + share * (end - start);
  }
}
