package cistern.differential;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How much one finding moves the odds of MS, or why it is not counted.
 *
 * @param observation the finding
 * @param logOdds the natural logarithm of the factor; empty when it is not counted
 * @param interval95 its predictive interval
 * @param note why it is not counted
 */
public record Weight(
    Observation observation,
    OptionalDouble logOdds,
    Optional<Proportion.Ends> interval95,
    Optional<String> note) {

  /** Whether it moves the odds. */
  public boolean isCounted() {
    return logOdds.isPresent();
  }

  /** The factor itself; one when it is not counted. */
  public double factor() {
    return Math.exp(logOdds.orElse(0));
  }
}
