package cistern.bands;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What somebody, or our reader, reports of a gel. */
public sealed interface BandReport {

  /** No focusing was reported. */
  record NotReported() implements BandReport {}

  /**
   * Bands counted by a person, who may have named a pattern as well.
   *
   * @param counts at least the CSF-only bands
   * @param pattern the pattern named beside the counts
   * @param origin who counted and how
   * @param gel the reading of the gel that the person edited, if there is one
   */
  record Counted(
      BandCounts counts, Optional<BandPattern> pattern, Origin origin, Optional<ReadFromGel> gel)
      implements BandReport {}

  /**
   * A pattern without counts.
   *
   * @param pattern one of the five
   * @param origin who named it and how
   */
  record Patterned(BandPattern pattern, Origin origin) implements BandReport {}

  /**
   * Only the conclusion.
   *
   * @param isPositive whether the bands were called positive
   * @param origin who concluded and how
   */
  record Concluded(boolean isPositive, Origin origin) implements BandReport {}

  /**
   * A picture of a gel that a work-up names and nobody has read yet.
   *
   * @param file the image, relative to the work-up
   * @param lanes the kinds of the lanes from left to right, as given; empty when not given
   * @param pair which pair of lanes is this person's
   * @param confirmedBy the person who confirmed the reading
   * @param edit the counts of a person who edited the reading, which win
   */
  record GelNamed(
      String file,
      List<String> lanes,
      int pair,
      Optional<String> confirmedBy,
      Optional<Counted> edit)
      implements BandReport {

    /** Copies the lanes. */
    public GelNamed {
      lanes = List.copyOf(lanes);
    }
  }

  /**
   * A reading by our reader; unconfirmed until a person has confirmed it.
   *
   * @param file the image, as the work-up names it
   * @param counts as read; empty when the lanes could not be paired
   * @param pattern as read, when the reader gives one
   * @param probabilityPositive the chance of CSF-only bands at or over the cut-off, 0 to 1; none
   *     when the lanes could not be paired
   * @param csfOnlyDistribution entry k is the chance of k CSF-only bands
   * @param confirmedBy the person who confirmed it
   */
  record ReadFromGel(
      String file,
      BandCounts counts,
      Optional<BandPattern> pattern,
      OptionalDouble probabilityPositive,
      List<Double> csfOnlyDistribution,
      Optional<String> confirmedBy)
      implements BandReport {

    /** Copies the distribution. */
    public ReadFromGel {
      csfOnlyDistribution = List.copyOf(csfOnlyDistribution);
    }
  }

  /**
   * Who reported and how.
   *
   * @param method of separation, as given
   * @param readBy laboratory or person, as given
   */
  record Origin(Optional<String> method, Optional<String> readBy) {
    /** Nothing said. */
    public static final Origin UNKNOWN = new Origin(Optional.empty(), Optional.empty());
  }
}
