package cistern.cohort;

import cistern.differential.Proportion;
import cistern.fact.Facts;
import java.util.Optional;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * Whether a limit that others published stands for a site, from its own controls: how many of them
 * lie beyond it, against how many may.
 *
 * @param people how many controls were judged
 * @param outside how many lie beyond the limit
 * @param allowed how many may
 */
public record VerifiedLimit(long people, long outside, long allowed) {

  /** Whether it stands. */
  public boolean stands() {
    return outside <= allowed;
  }

  /**
   * The rule of CLSI EP28-A3c: of 20 own samples at most 2 lie beyond the limits, so that a right
   * limit is refused about once in thirteen times; for more people the same chance.
   *
   * @param fewest people that are needed
   * @param allowed how many of the fewest may lie outside
   * @param beyond the share of the healthy that a right limit leaves outside
   */
  record Rule(int fewest, int allowed, double beyond) {

    static Rule of(Facts facts) {
      return new Rule(
          (int) facts.number("cohort.verification.people"),
          (int) facts.number("cohort.verification.outside"),
          1 - facts.number("cohort.reference-share"));
    }

    Optional<VerifiedLimit> judge(Proportion share) {
      long people = Math.round(share.of());
      if (people < fewest) {
        return Optional.empty();
      }
      double chance = new BinomialDistribution(fewest, beyond).cumulativeProbability(allowed);
      BinomialDistribution outside = new BinomialDistribution((int) people, beyond);
      int most = allowed;
      while (outside.cumulativeProbability(most) < chance) {
        most++;
      }
      return Optional.of(new VerifiedLimit(people, Math.round(share.positive()), most));
    }
  }
}
