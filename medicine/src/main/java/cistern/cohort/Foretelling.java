package cistern.cohort;

import cistern.cohort.CohortMember.Foretold;
import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * How the probabilities that a site was given stand to what became of its people, by the rule that
 * the published model had to meet: each arm (bands, none) covered, and both scores better than
 * those of the stated prior alone.
 *
 * @param given the scores of the probabilities
 * @param prior the scores of what was stated before the fluid
 * @param arms with bands, and without
 */
public record Foretelling(Calibration given, Calibration prior, List<Arm> arms)
    implements Serializable {

  /** Nobody yet. */
  public static final Foretelling NONE =
      new Foretelling(
          Calibration.NONE,
          Calibration.NONE,
          List.of(new Arm(0, 0, 0, 0, 0), new Arm(0, 0, 0, 0, 0)));

  private static final double TAIL = 0.025;

  /** Copies the arms. */
  public Foretelling {
    arms = List.copyOf(arms);
  }

  /**
   * One arm.
   *
   * @param people in it
   * @param happened of how many it came true
   * @param foretold the sum of the points
   * @param lowers the sum of the lower ends of the predictive intervals
   * @param uppers the sum of the upper ends
   */
  public record Arm(long people, long happened, double foretold, double lowers, double uppers)
      implements Serializable {

    private Arm with(Foretold said, boolean cameTrue) {
      return new Arm(
          people + 1,
          happened + (cameTrue ? 1 : 0),
          foretold + said.point(),
          lowers + said.lower(),
          uppers + said.upper());
    }

    private Arm merge(Arm other) {
      return new Arm(
          people + other.people,
          happened + other.happened,
          foretold + other.foretold,
          lowers + other.lowers,
          uppers + other.uppers);
    }

    /**
     * The counts that would not surprise: from the lower tail of the binomial law at the mean lower
     * end to the upper tail at the mean upper end.
     */
    public Optional<ConfidenceInterval> expected() {
      if (people == 0) {
        return Optional.empty();
      }
      int n = (int) people;
      return Optional.of(
          new ConfidenceInterval(
              new BinomialDistribution(n, lowers / people).inverseCumulativeProbability(TAIL),
              new BinomialDistribution(n, uppers / people).inverseCumulativeProbability(1 - TAIL)));
    }

    /** Whether the count is one of those. */
    public boolean isCovered() {
      return expected().filter(e -> e.holds((double) happened)).isPresent();
    }
  }

  /** The people of both. */
  Foretelling merge(Foretelling other) {
    return new Foretelling(
        given.merge(other.given),
        prior.merge(other.prior),
        List.of(
            arms.getFirst().merge(other.arms.getFirst()),
            arms.getLast().merge(other.arms.getLast())));
  }

  /** One person more. */
  Foretelling with(Foretold said, boolean cameTrue) {
    return new Foretelling(
        given.with(said.point(), cameTrue),
        prior.with(said.prior(), cameTrue),
        List.of(
            said.withBands() ? arms.getFirst().with(said, cameTrue) : arms.getFirst(),
            said.withBands() ? arms.getLast() : arms.getLast().with(said, cameTrue)));
  }

  /**
   * Whether the model holds at this site; empty while an arm has fewer people than are needed.
   *
   * @param fewest people in each arm
   */
  public Optional<Boolean> holds(int fewest) {
    if (arms.stream().anyMatch(arm -> arm.people() < fewest)) {
      return Optional.empty();
    }
    return Optional.of(
        arms.stream().allMatch(Arm::isCovered)
            && given.brier() < prior.brier()
            && given.logScore() < prior.logScore());
  }
}
