package cistern.cohort;

import cistern.fact.Facts;
import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * The limits that hold the middle 95 % of a laboratory's own people without the disease.
 *
 * <p>By rank (the (n + 1)p-th value, Hyndman and Fan's type 6) with the confidence ranks of the
 * binomial distribution as CLSI EP28 asks; from fewer people by Horn's robust estimate; from too
 * few by neither.
 */
public final class ReferenceLimits {

  private final double tail;
  private final double confidence;
  private final int fewestForRanks;
  private final int fewestForRobust;

  private ReferenceLimits(Facts facts) {
    tail = (1 - facts.number("cohort.reference-share")) / 2;
    confidence = facts.number("cohort.rank-confidence");
    fewestForRanks = (int) facts.number("cohort.reference-ranks.people");
    fewestForRobust = (int) facts.number("cohort.reference-robust.people");
  }

  /** The limits under some facts. */
  public static ReferenceLimits of(Facts facts) {
    return new ReferenceLimits(facts);
  }

  /** What some people's values say about the limits. */
  public sealed interface Estimate {

    /** How many values there were. */
    int people();

    /**
     * Limits by rank.
     *
     * @param people how many values there were
     * @param lower the lower limit
     * @param lowerBetween its confidence interval, by rank
     * @param upper the upper limit
     * @param upperBetween its confidence interval, by rank
     */
    record ByRank(
        int people,
        double lower,
        ConfidenceInterval lowerBetween,
        double upper,
        ConfidenceInterval upperBetween)
        implements Estimate {}

    /**
     * Limits by the robust estimate, for too few people to count ranks.
     *
     * @param people how many values there were
     * @param lower the lower limit
     * @param upper the upper limit
     */
    record Robust(int people, double lower, double upper) implements Estimate {}

    /**
     * No limits: too few people.
     *
     * @param people how many values there were
     * @param needed how many are needed at least
     */
    record TooFew(int people, int needed) implements Estimate {}
  }

  /**
   * The limits of some values.
   *
   * @param values one value a person, finite, in any order and any unit
   */
  public Estimate of(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    if (n < fewestForRobust) {
      return new Estimate.TooFew(n, fewestForRobust);
    }
    Optional<ConfidenceInterval> ranks = confidenceRanks(n);
    if (n < fewestForRanks || ranks.isEmpty()) {
      return RobustLocation.of(sorted)
          .map(robust -> robustLimits(n, robust))
          .orElseGet(() -> new Estimate.TooFew(n, fewestForRanks));
    }
    int low = (int) ranks.get().lower();
    int high = (int) ranks.get().upper();
    return new Estimate.ByRank(
        n,
        Quantiles.typeSix(sorted, tail),
        new ConfidenceInterval(sorted[low - 1], sorted[high - 1]),
        Quantiles.typeSix(sorted, 1 - tail),
        new ConfidenceInterval(sorted[n - high], sorted[n - low]));
  }

  private Estimate robustLimits(int n, RobustLocation robust) {
    double t = new TDistribution(n - 1).inverseCumulativeProbability(1 - tail);
    double margin = t * Math.hypot(robust.spread(), robust.error());
    return new Estimate.Robust(n, robust.centre() - margin, robust.centre() + margin);
  }

  /**
   * The ranks, from 1, between which the lower limit lies with the confidence in force; empty when
   * n is too small for one. The upper limit's are n + 1 less these.
   */
  Optional<ConfidenceInterval> confidenceRanks(int n) {
    BinomialDistribution under = new BinomialDistribution(n, tail);
    double each = (1 - confidence) / 2;
    int low = 0;
    while (under.cumulativeProbability(low) <= each) {
      low++;
    }
    int high = low;
    while (1 - under.cumulativeProbability(high - 1) > each) {
      high++;
    }
    return low == 0 ? Optional.empty() : Optional.of(new ConfidenceInterval(low, high));
  }
}
