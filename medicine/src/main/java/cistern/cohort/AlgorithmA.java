package cistern.cohort;

import java.util.Arrays;

/**
 * Robust mean and standard deviation by Algorithm A of ISO 13528 and ISO 5725-5: values farther
 * than one and a half standard deviations from the mean are drawn in, until nothing moves.
 *
 * @param mean the robust mean x*
 * @param standardDeviation the robust standard deviation s*
 */
public record AlgorithmA(double mean, double standardDeviation) {

  private static final double START = 1.483;
  private static final double REACH = 1.5;
  private static final double FACTOR = 1.134;
  private static final double STILL = 1e-13;
  private static final int MOST_STEPS = 10_000;

  /**
   * The fixed point of the algorithm.
   *
   * @param values at least two finite values
   */
  public static AlgorithmA of(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double median = Quantiles.median(sorted);
    double[] away = Arrays.stream(sorted).map(x -> Math.abs(x - median)).sorted().toArray();
    AlgorithmA now = new AlgorithmA(median, START * Quantiles.median(away));
    for (int step = 0; step < MOST_STEPS; step++) {
      AlgorithmA next = now.next(sorted);
      if (Math.abs(next.standardDeviation - now.standardDeviation)
          <= STILL * now.standardDeviation) {
        return next;
      }
      now = next;
    }
    return now;
  }

  private AlgorithmA next(double[] values) {
    double reach = REACH * standardDeviation;
    Moments drawnIn = Moments.NONE;
    for (double value : values) {
      drawnIn = drawnIn.with(Math.clamp(value, mean - reach, mean + reach));
    }
    return new AlgorithmA(drawnIn.mean(), FACTOR * drawnIn.standardDeviation());
  }
}
