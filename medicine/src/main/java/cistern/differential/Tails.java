package cistern.differential;

import java.util.Arrays;

/**
 * The 2.5 % and 97.5 % points of some values. Only the outermost values are kept in order, which is
 * ten times faster than sorting them all.
 *
 * @param lower the 2.5 % point
 * @param upper the 97.5 % point
 */
record Tails(double lower, double upper) {

  private static final double TAIL = 0.025;

  /** The tails of some values, which stay as they are. */
  static Tails of(double[] values) {
    double at = TAIL * (values.length - 1);
    int kept = Math.min((int) at + 2, values.length);
    double[] smallest = new double[kept];
    double[] largest = new double[kept];
    Arrays.fill(smallest, Double.POSITIVE_INFINITY);
    Arrays.fill(largest, Double.POSITIVE_INFINITY);
    for (double value : values) {
      insert(smallest, value);
      insert(largest, -value);
    }
    return new Tails(between(smallest, at), -between(largest, at));
  }

  /** Puts a value into its place among the smallest, if it is one of them. */
  private static void insert(double[] smallest, double value) {
    int place = smallest.length - 1;
    if (value >= smallest[place]) {
      return;
    }
    while (place > 0 && smallest[place - 1] > value) {
      smallest[place] = smallest[place - 1];
      place--;
    }
    smallest[place] = value;
  }

  private static double between(double[] sorted, double at) {
    int below = (int) at;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }

  /** These tails as an interval, wide enough to hold a central value. */
  Proportion.Ends around(double central) {
    return new Proportion.Ends(Math.min(central, lower), Math.max(central, upper));
  }
}
