package cistern.gel.reading;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One pair of lanes as read.
 *
 * @param pair its number
 * @param counts what was counted, when both lanes were found
 * @param pattern one of the five, unless something forbids it
 * @param needsReview whether the reading must not stand without a look at the gel
 */
public record PairReading(
    int pair,
    OptionalInt csfLane,
    OptionalInt serumLane,
    Optional<Counts> counts,
    Optional<BandPattern> pattern,
    BandVerdict verdict,
    boolean needsReview,
    List<GelProblem> problems) {

  /** Copies the list. */
  public PairReading {
    problems = List.copyOf(problems);
  }

  /**
   * Counts and chances.
   *
   * @param csfOnly median of the distribution
   * @param csfOnlyDistribution entry k is the chance of k CSF-only bands
   * @param probabilityPositive chance of CSF-only bands at or over the cut-off
   * @param probabilityOfPattern chance of each of the five
   */
  public record Counts(
      int csfOnly,
      int shared,
      int serumOnly,
      List<Double> csfOnlyDistribution,
      double probabilityPositive,
      List<Double> probabilityOfPattern) {

    /** Copies the lists. */
    public Counts {
      csfOnlyDistribution = List.copyOf(csfOnlyDistribution);
      probabilityOfPattern = List.copyOf(probabilityOfPattern);
    }
  }
}
