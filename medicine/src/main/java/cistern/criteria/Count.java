package cistern.criteria;

/**
 * A count of attacks or of objective lesions: known, a lower bound, or unknown.
 *
 * @param least the smallest number it can be, 0 or more
 * @param most the largest number it can be, {@link #UNBOUNDED} without a limit
 */
public record Count(int least, int most) {

  /** No upper limit. */
  public static final int UNBOUNDED = Integer.MAX_VALUE;

  /** Nothing is known. */
  public static final Count UNKNOWN = new Count(0, UNBOUNDED);

  /** Checks the order of the ends. */
  public Count {
    if (least < 0 || most < least) {
      throw new IllegalArgumentException("a count is not negative and its ends are ordered");
    }
  }

  /** A known number. */
  public static Count of(int number) {
    return new Count(number, number);
  }

  /** A lower bound. */
  public static Count atLeast(int number) {
    return new Count(number, UNBOUNDED);
  }

  /** Whether the number is known. */
  public boolean isKnown() {
    return least == most;
  }

  /** In words: {@code 2}, {@code at least 1} or {@code unknown}. */
  public String toText() {
    if (isKnown()) {
      return Integer.toString(least);
    }
    return least == 0 ? "unknown" : "at least " + least;
  }

  /** The smallest level of this count among 0, 1 and 2 (two or more). */
  int lowLevel() {
    return Math.min(least, TWO_OR_MORE);
  }

  /** The largest level of this count among 0, 1 and 2 (two or more). */
  int highLevel() {
    return Math.min(most, TWO_OR_MORE);
  }

  /** The level that stands for two or more. */
  static final int TWO_OR_MORE = 2;
}
