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

  private static double[] drawn(double[] from, SplittableRandom random) {
    double[] drawn = new double[from.length];
    Arrays.setAll(drawn, i -> from[random.nextInt(from.length)]);
    Arrays.sort(drawn);
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
    double[] all = new double[ill.length + well.length];
    System.arraycopy(ill, 0, all, 0, ill.length);
    System.arraycopy(well, 0, all, ill.length, well.length);
    Arrays.sort(all);
    int i = 0;
    int j = 0;
    double best = all[0];
    double bestIndex = Double.NEGATIVE_INFINITY;
    for (int k = 0; k + 1 < all.length; k++) {
      if (all[k] == all[k + 1]) {
        continue;
      }
      while (i < ill.length && ill[i] <= all[k]) {
        i++;
      }
      while (j < well.length && well[j] <= all[k]) {
        j++;
      }
      double index = (double) j / well.length - (double) i / ill.length;
      if (index > bestIndex) {
        bestIndex = index;
        best = all[k] + (all[k + 1] - all[k]) / 2;
      }
    }
    return best;
  }
}
