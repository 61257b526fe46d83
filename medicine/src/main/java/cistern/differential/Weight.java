package cistern.differential;

import java.util.Optional;

/**
 * How much one finding moves the odds of one disease: of MS against the rest, of another disease
 * against MS.
 *
 * @param observation the finding
 * @param disease the disease
 * @param logOdds the natural logarithm of the factor
 * @param interval95 its 95 % interval; given for MS
 */
public record Weight(
    Observation observation,
    Disease disease,
    double logOdds,
    Optional<Proportion.Ends> interval95) {

  /** Whether it moves MS against the rest; else it moves a disease against MS. */
  public boolean isAgainstRest() {
    return disease == Disease.MS;
  }

  /** The factor itself: how many times more likely. */
  public double factor() {
    return Math.exp(logOdds);
  }
}
