package cistern.gel.reading;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One pair of lanes as read.
 *
 * @param pair its number
 * @param counts what was counted, when both lanes were found
 * @param pattern one of the five, unless something forbids it
 * @param review why the reading must not stand without a look at the gel, in words; empty when it
 *     need not be looked at more than any other
 */
public record PairReading(
    int pair,
    OptionalInt csfLane,
    OptionalInt serumLane,
    Optional<Counts> counts,
    Optional<BandPattern> pattern,
    BandVerdict verdict,
    List<String> review,
    List<GelProblem> problems) {

  /** Copies the lists. */
  public PairReading {
    review = List.copyOf(review);
    problems = List.copyOf(problems);
  }

  /** Whether the reading must not stand without a look at the gel. */
  public boolean needsReview() {
    return !review.isEmpty();
  }

  /** The same with one more reason for a look. */
  public PairReading lookedAt(String reason) {
    List<String> more = new ArrayList<>(review);
    more.add(reason);
    return new PairReading(pair, csfLane, serumLane, counts, pattern, verdict, more, problems);
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
