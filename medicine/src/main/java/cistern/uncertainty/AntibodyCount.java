package cistern.uncertainty;

import java.util.Arrays;
import java.util.List;

/**
 * How many antibody indices lie over their limits. Given the quotient that total IgG explains, the
 * antibodies are independent.
 *
 * @param steps each antibody's quotient over its limit
 * @param expected the explained quotient
 * @param fixed its fixed points
 */
record AntibodyCount(
    List<LogNormal> steps, ExpectedQuotient expected, ExpectedQuotient.Points fixed) {

  /** Copies the list. */
  AntibodyCount {
    steps = List.copyOf(steps);
  }

  /** The chance of at least so many. */
  double chanceFrom(int least) {
    double leastSigma = steps.stream().mapToDouble(LogNormal::sigma).min().orElse(0);
    ExpectedQuotient.Points points =
        expected.isSmooth(leastSigma) ? fixed : expected.splitPoints(steps);
    double[] counts = new double[steps.size() + 1];
    double sum = 0;
    for (int i = 0; i < points.size(); i++) {
      sum += points.weight(i) * chanceFrom(least, points.log(i), counts);
    }
    return sum;
  }

  /** The counts are filled with the chance of exactly so many, antibody by antibody. */
  private double chanceFrom(int least, double log, double[] counts) {
    Arrays.fill(counts, 0);
    counts[0] = 1;
    for (int n = 0; n < steps.size(); n++) {
      LogNormal step = steps.get(n);
      double above = StandardNormal.above(step.mu() - log, step.sigma());
      for (int k = n + 1; k > 0; k--) {
        counts[k] = counts[k] * (1 - above) + counts[k - 1] * above;
      }
      counts[0] *= 1 - above;
    }
    double sum = 0;
    for (int k = Math.max(0, least); k < counts.length; k++) {
      sum += counts[k];
    }
    return sum;
  }
}
