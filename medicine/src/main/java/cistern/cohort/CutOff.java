package cistern.cohort;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * The cut-off that tells two groups apart best by Youden's index, and how uncertain it is.
 *
 * @param value values above it count as positive
 * @param sensitivity the share of people with the diagnosis above it
 * @param specificity the share of people without it not above it
 * @param between where the cut-off lies in 95 % of samples drawn anew from these people
 */
public record CutOff(
    double value, double sensitivity, double specificity, ConfidenceInterval between) {

  private static final int DRAWS = 2_000;
  private static final double TAIL = 0.025;

  /**
   * The best cut-off: half way between two neighbouring values; of several equally good ones the
   * lowest.
   *
   * @param with the values of people with the diagnosis, at least two
   * @param without those of people without it, at least two
   * @param seed of the drawing anew
   */
  public static CutOff of(double[] with, double[] without, long seed) {
    double[] ill = sorted(with);
    double[] well = sorted(without);
    double best = best(ill, well);
    SplittableRandom random = new SplittableRandom(seed);
    double[] drawn = new double[DRAWS];
    for (int i = 0; i < DRAWS; i++) {
      drawn[i] = best(drawn(ill, random), drawn(well, random));
    }
    Arrays.sort(drawn);
    return new CutOff(
        best,
        1 - shareUpTo(ill, best),
        shareUpTo(well, best),
        new ConfidenceInterval(Quantiles.typeSix(drawn, TAIL), Quantiles.typeSix(drawn, 1 - TAIL)));
  }

  private static double[] sorted(double[] values) {
    if (values.length < 2) {
      throw new IllegalArgumentException("each side needs two people");
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted;
  }

  /** As many values drawn anew, in order: how often each is drawn needs no sorting. */
  private static double[] drawn(double[] sorted, SplittableRandom random) {
    int[] times = new int[sorted.length];
    for (int i = 0; i < sorted.length; i++) {
      times[random.nextInt(sorted.length)]++;
    }
    double[] drawn = new double[sorted.length];
    int at = 0;
    for (int i = 0; i < sorted.length; i++) {
      Arrays.fill(drawn, at, at + times[i], sorted[i]);
      at += times[i];
    }
    return drawn;
  }

  private static double shareUpTo(double[] sorted, double value) {
    int count = 0;
    while (count < sorted.length && sorted[count] <= value) {
      count++;
    }
    return (double) count / sorted.length;
  }

  private static double best(double[] ill, double[] well) {
    int i = 0;
    int j = 0;
    double value = Math.min(ill[0], well[0]);
    double best = value;
    double bestIndex = Double.NEGATIVE_INFINITY;
    while (i < ill.length || j < well.length) {
      while (i < ill.length && ill[i] <= value) {
        i++;
      }
      while (j < well.length && well[j] <= value) {
        j++;
      }
      double next = Math.min(from(ill, i), from(well, j));
      double index = (double) j / well.length - (double) i / ill.length;
      if (index > bestIndex && next < Double.POSITIVE_INFINITY) {
        bestIndex = index;
        best = value + (next - value) / 2;
      }
      value = next;
    }
    return best;
  }

  private static double from(double[] sorted, int place) {
    return place < sorted.length ? sorted[place] : Double.POSITIVE_INFINITY;
  }
}
