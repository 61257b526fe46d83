package cistern.cohort;

import java.io.Serializable;

/**
 * Count, mean and standard deviation of many values, in parts that may be merged in any order and
 * grouping.
 *
 * <p>The sums of the values and of their squares are carried in two doubles each (error-free
 * transformations, Dekker 1971 and Knuth), so that a different order of adding changes the mean and
 * the standard deviation by less than one part in 10¹².
 *
 * @param count the number of values
 * @param sum the leading part of Σx
 * @param sumRest what the leading part lacks
 * @param squares the leading part of Σx²
 * @param squaresRest what the leading part lacks
 */
public record Moments(long count, double sum, double sumRest, double squares, double squaresRest)
    implements Serializable {

  /** No value yet. */
  public static final Moments NONE = new Moments(0, 0, 0, 0, 0);

  /**
   * These values and one more.
   *
   * @throws IllegalArgumentException when the value is not finite
   */
  public Moments with(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a value of a cohort is finite");
    }
    double square = value * value;
    return merge(new Moments(1, value, 0, square, Math.fma(value, value, -square)));
  }

  /** The values of a column; NaN is none. */
  static Moments of(double[] column) {
    Moments all = NONE;
    for (double value : column) {
      all = Double.isNaN(value) ? all : all.with(value);
    }
    return all;
  }

  /** The values of both. */
  public Moments merge(Moments other) {
    double total = sum + other.sum;
    double rest = lost(sum, other.sum, total) + sumRest + other.sumRest;
    double leading = total + rest;
    double squareTotal = squares + other.squares;
    double squareRest = lost(squares, other.squares, squareTotal) + squaresRest + other.squaresRest;
    double squareLeading = squareTotal + squareRest;
    return new Moments(
        count + other.count,
        leading,
        rest - (leading - total),
        squareLeading,
        squareRest - (squareLeading - squareTotal));
  }

  /** What the rounded sum of two numbers lost. */
  private static double lost(double a, double b, double rounded) {
    double partOfB = rounded - a;
    return (a - (rounded - partOfB)) + (b - partOfB);
  }

  /**
   * The mean.
   *
   * @throws IllegalStateException when there is no value
   */
  public double mean() {
    if (count == 0) {
      throw new IllegalStateException("no value, no mean");
    }
    return sum / count + sumRest / count;
  }

  /**
   * The standard deviation with n − 1.
   *
   * @throws IllegalStateException when there are fewer than two values
   */
  public double standardDeviation() {
    if (count < 2) {
      throw new IllegalStateException("one value has no standard deviation");
    }
    // Σx² − (Σx)²/n, both sides to twice the digits of a double
    double square = sum * sum;
    double squareLost = Math.fma(sum, sum, -square) + 2 * sum * sumRest;
    double part = square / count;
    double partRest = (Math.fma(-part, (double) count, square) + squareLost) / count;
    double spread = (squares - part) + (squaresRest - partRest);
    return Math.sqrt(Math.max(0, spread) / (count - 1));
  }
}
