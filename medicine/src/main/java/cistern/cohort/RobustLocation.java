package cistern.cohort;

import java.util.Arrays;
import java.util.Optional;

/**
 * Centre and spread by Tukey's biweight, as Horn, Pesce and Copeland use them for reference limits
 * (Clin Chem 1998;44:622, PMID 9510871; equations from memory).
 *
 * @param centre the centre, in the unit of the values
 * @param spread the biweight standard deviation with the wide constant
 * @param error the uncertainty of the centre
 */
record RobustLocation(double centre, double spread, double error) {

  private static final double NARROW = 3.7;
  private static final double WIDE = 205.6;

  /** The median absolute deviation of a normal distribution in standard deviations. */
  private static final double NORMAL_MAD = 0.6745;

  private static final int MOST_STEPS = 200;
  private static final double STILL = 1e-12;

  /** The estimate from rising values; empty when more than half of them are alike. */
  static Optional<RobustLocation> of(double[] sorted) {
    double median = Quantiles.median(sorted);
    double[] away = Arrays.stream(sorted).map(x -> Math.abs(x - median)).sorted().toArray();
    double scale = Quantiles.median(away) / NORMAL_MAD;
    if (scale == 0) {
      return Optional.empty();
    }
    double error = biweight(sorted, median, NARROW * scale) / Math.sqrt(sorted.length);
    return Optional.of(
        new RobustLocation(
            centre(sorted, median, NARROW * scale), biweight(sorted, median, WIDE * scale), error));
  }

  private static double centre(double[] values, double start, double reach) {
    double centre = start;
    for (int step = 0; step < MOST_STEPS; step++) {
      double weights = 0;
      double moved = 0;
      for (double value : values) {
        double u = (value - centre) / reach;
        if (Math.abs(u) < 1) {
          double weight = (1 - u * u) * (1 - u * u);
          weights += weight;
          moved += weight * value;
        }
      }
      double next = moved / weights;
      if (Math.abs(next - centre) <= STILL * reach) {
        return next;
      }
      centre = next;
    }
    return centre;
  }

  /** reach · √(n Σ(1−u²)⁴u² / (D·max(1, D − 1))), D = Σ(1−u²)(1−5u²), over |u| < 1. */
  private static double biweight(double[] values, double centre, double reach) {
    double above = 0;
    double below = 0;
    for (double value : values) {
      double u = (value - centre) / reach;
      double left = 1 - u * u;
      if (left > 0) {
        above += left * left * left * left * u * u;
        below += left * (1 - 5 * u * u);
      }
    }
    return reach * Math.sqrt(values.length * above / (below * Math.max(1, below - 1)));
  }
}
