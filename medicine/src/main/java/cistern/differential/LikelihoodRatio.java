package cistern.differential;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How many times more likely a finding is with the disease than without it, from two counts.
 *
 * @param with how many with the disease have the finding
 * @param without how many without the disease have it
 */
public record LikelihoodRatio(Proportion with, Proportion without) {

  /** The ratio for a finding that is there. */
  public double positive() {
    return with.share() / without.share();
  }

  /** The ratio for a finding that was looked for and not found. */
  public double negative() {
    return (1 - with.share()) / (1 - without.share());
  }

  /**
   * The log-normal interval of the positive ratio: variance 1/TP − 1/(TP+FN) + 1/FP − 1/(FP+TN).
   */
  public Proportion.Ends positiveInterval(double level) {
    return interval(positive(), with.positive(), without.positive(), level);
  }

  /**
   * The log-normal interval of the negative ratio: variance 1/FN − 1/(TP+FN) + 1/TN − 1/(FP+TN).
   */
  public Proportion.Ends negativeInterval(double level) {
    return interval(
        negative(), with.of() - with.positive(), without.of() - without.positive(), level);
  }

  private Proportion.Ends interval(double ratio, double a, double b, double level) {
    double z = new NormalDistribution().inverseCumulativeProbability((1 + level) / 2);
    double spread = z * Math.sqrt(1 / a - 1 / with.of() + 1 / b - 1 / without.of());
    return new Proportion.Ends(ratio * Math.exp(-spread), ratio * Math.exp(spread));
  }
}
