package cistern.cohort;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * A straight line in age under which a given share of people lies: linear quantile regression
 * (Koenker and Bassett 1978, Econometrica 46:33, doi 10.2307/1913643).
 *
 * @param intercept the value at age 0, in the unit of the values
 * @param perYear the rise a year
 */
public record AgeLine(double intercept, double perYear) {

  private static final int HALVINGS = 200;

  /** The value at an age, in years. */
  public double at(double age) {
    return intercept + perYear * age;
  }

  /**
   * The line that makes Σρ(value − line) least, ρ(r) = r·(p − [r &lt; 0]). For each slope the best
   * intercept is a quantile of what is left, and the sum so left is convex in the slope: its least
   * is found by halving.
   *
   * @param ages in years, not all alike
   * @param values one a person
   * @param p the share under the line, between 0 and 1
   */
  public static AgeLine of(double[] ages, double[] values, double p) {
    if (ages.length != values.length || ages.length < 2) {
      throw new IllegalArgumentException("a line needs two people with age and value");
    }
    double steepest = steepest(ages, values);
    double low = -steepest;
    double high = steepest;
    for (int i = 0; i < HALVINGS && low < high; i++) {
      double middle = low + (high - low) / 2;
      if (middle == low || middle == high) {
        break;
      }
      if (rises(ages, values, p, middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    double slope = low + (high - low) / 2;
    return new AgeLine(intercept(left(ages, values, slope), p), slope);
  }

  /** The steepest line through two people of different age that are neighbours in age. */
  private static double steepest(double[] ages, double[] values) {
    Integer[] order = IntStream.range(0, ages.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, Comparator.comparingDouble(i -> ages[i]));
    double least = Arrays.stream(values).min().orElseThrow();
    double most = Arrays.stream(values).max().orElseThrow();
    double gap = Double.POSITIVE_INFINITY;
    for (int i = 1; i < order.length; i++) {
      double apart = ages[order[i]] - ages[order[i - 1]];
      if (apart > 0) {
        gap = Math.min(gap, apart);
      }
    }
    if (gap == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("a line in age needs people of different age");
    }
    return (most - least) / gap + Double.MIN_NORMAL;
  }

  /** Whether the least sum rises with the slope here. */
  private static boolean rises(double[] ages, double[] values, double p, double slope) {
    double[] left = left(ages, values, slope);
    double intercept = intercept(left, p);
    // The derivative of the sum along the slope, the intercept following so that the share holds.
    double pull = 0;
    double over = 0;
    double agesOnLine = 0;
    int onLine = 0;
    for (int i = 0; i < left.length; i++) {
      if (left[i] == intercept) {
        onLine++;
        agesOnLine += ages[i];
      } else {
        double weight = left[i] > intercept ? -p : 1 - p;
        pull += weight * ages[i];
        over += weight;
      }
    }
    return pull - over * agesOnLine / onLine > 0;
  }

  private static double[] left(double[] ages, double[] values, double slope) {
    double[] left = new double[ages.length];
    Arrays.setAll(left, i -> values[i] - slope * ages[i]);
    return left;
  }

  private static double intercept(double[] left, double p) {
    double[] sorted = left.clone();
    Arrays.sort(sorted);
    int rank = Math.clamp((int) Math.ceil(sorted.length * p), 1, sorted.length);
    return sorted[rank - 1];
  }
}
