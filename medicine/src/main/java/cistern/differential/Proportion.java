package cistern.differential;

import org.hipparchus.distribution.continuous.BetaDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * A published count: so many of so many. Counts rebuilt from a percentage need not be whole.
 *
 * @param positive how many had it, 0 to {@code of}
 * @param of how many were looked at, positive
 */
public record Proportion(double positive, double of) {

  /** Checks the range. */
  public Proportion {
    if (!(of > 0) || !(positive >= 0) || positive > of) {
      throw new IllegalArgumentException("a proportion lies between none and all");
    }
  }

  /**
   * The ends of an interval.
   *
   * @param lower the lower end
   * @param upper the upper end
   */
  public record Ends(double lower, double upper) {}

  /** The share, 0 to 1. */
  public double share() {
    return positive / of;
  }

  /** The score interval of Wilson (1927), JASA 22:209, at a two-sided level. */
  public Ends wilson(double level) {
    double z = new NormalDistribution().inverseCumulativeProbability((1 + level) / 2);
    double z2 = z * z;
    double centre = (positive + z2 / 2) / (of + z2);
    double spread = z / (of + z2) * Math.sqrt(positive * (of - positive) / of + z2 / 4);
    return new Ends(Math.max(0, centre - spread), Math.min(1, centre + spread));
  }

  /** The exact interval of Clopper and Pearson (1934), Biometrika 26:404, at a two-sided level. */
  public Ends clopperPearson(double level) {
    double tail = (1 - level) / 2;
    double lower =
        positive == 0
            ? 0
            : new BetaDistribution(positive, of - positive + 1).inverseCumulativeProbability(tail);
    double upper =
        positive == of
            ? 1
            : new BetaDistribution(positive + 1, of - positive)
                .inverseCumulativeProbability(1 - tail);
    return new Ends(lower, upper);
  }

  /**
   * The interval that a page prints: exact where none or all had it, else the score interval, which
   * covers better on average.
   */
  public Ends printed(double level) {
    return positive == 0 || positive == of ? clopperPearson(level) : wilson(level);
  }
}
