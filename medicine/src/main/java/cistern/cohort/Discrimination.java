package cistern.cohort;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How well a measurement tells people with a diagnosis from people without it: the area under the
 * ROC curve with the variance of DeLong 1988 (Biometrics 44:837, doi 10.2307/2531595).
 *
 * <p>The area is the chance that a person with the diagnosis has the higher value, ties counted
 * half.
 */
public final class Discrimination {

  private final double[] with;
  private final double[] without;
  private final double area;

  private Discrimination(double[] with, double[] without) {
    this.with = with;
    this.without = without;
    double total = 0;
    for (double place : with) {
      total += place;
    }
    this.area = total / with.length;
  }

  /**
   * The discrimination of some values.
   *
   * @param with the values of people with the diagnosis, at least two
   * @param without those of people without it, at least two
   */
  public static Discrimination of(double[] with, double[] without) {
    if (with.length < 2 || without.length < 2) {
      throw new IllegalArgumentException("each side needs two people");
    }
    return new Discrimination(placements(with, without, 1), placements(without, with, -1));
  }

  /** For each value the share of the others that lie under it (over it for −1), ties half. */
  private static double[] placements(double[] values, double[] others, int direction) {
    double[] sorted = others.clone();
    Arrays.sort(sorted);
    double[] places = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      int under = firstNotUnder(sorted, values[i]);
      int notOver = firstNotUnder(sorted, Math.nextUp(values[i]));
      double share = (under + (notOver - under) / 2.0) / sorted.length;
      places[i] = direction > 0 ? share : 1 - share;
    }
    return places;
  }

  private static int firstNotUnder(double[] sorted, double value) {
    int low = 0;
    int high = sorted.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (sorted[middle] < value) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The area under the curve, from 0 to 1. */
  public double area() {
    return area;
  }

  /** The variance of the area. */
  public double variance() {
    return variance(with) / with.length + variance(without) / without.length;
  }

  private double variance(double[] places) {
    double sum = 0;
    for (double place : places) {
      sum += (place - area) * (place - area);
    }
    return sum / (places.length - 1);
  }

  /** The interval of the area by the normal distribution, not beyond 0 and 1. */
  public ConfidenceInterval interval(double confidence) {
    double z = new NormalDistribution().inverseCumulativeProbability((1 + confidence) / 2);
    double half = z * Math.sqrt(variance());
    return new ConfidenceInterval(Math.max(0, area - half), Math.min(1, area + half));
  }
}
