package cistern.report.wording;

import cistern.differential.Proportion;
import cistern.differential.Weight;
import cistern.finding.Printed;

/** How much a finding moves the odds, in words. */
public final class OddsWords {

  /** Posteriors under this share are left out of documents, not of files. */
  public static final double LEAST_SHOWN = 0.01;

  private static final double UNMOVED = 1.05;

  /** Beyond it only the tail of a belief speaks. */
  private static final double MOST_SHOWN = 1000;

  private OddsWords() {}

  /** {@code makes MS 4 times more likely (2 to 9 times)}. */
  public static String of(Weight weight) {
    if (weight.logOdds() == 0) {
      return "adds nothing to what was heard before it";
    }
    double factor = Math.exp(Math.abs(weight.logOdds()));
    String interval = weight.interval95().map(OddsWords::interval).orElse("");
    if (!isMoving(weight)) {
      return "hardly moves MS" + interval;
    }
    return "makes MS %s times %s likely%s"
        .formatted(
            Printed.significant(rounded(factor)), weight.logOdds() > 0 ? "more" : "less", interval);
  }

  /**
   * From the lesser to the greater end: {@code (2.1 to 3.1)}, or with the words where they differ.
   */
  private static String interval(Proportion.Ends ends) {
    boolean isMore = ends.lower() >= 0;
    boolean isLess = ends.upper() <= 0;
    if (!isMore && !isLess) {
      return " (%s times less to %s times more)".formatted(size(ends.lower()), size(ends.upper()));
    }
    return isMore
        ? " (%s to %s)".formatted(size(ends.lower()), size(ends.upper()))
        : " (%s to %s)".formatted(size(ends.upper()), size(ends.lower()));
  }

  /** How many times, whichever way. */
  private static String size(double log) {
    double factor = Math.exp(Math.abs(log));
    return factor > MOST_SHOWN
        ? "over " + Printed.significant(MOST_SHOWN)
        : Printed.significant(rounded(factor));
  }

  /** Whether a finding moves the odds enough to be told. */
  public static boolean isMoving(Weight weight) {
    return Math.exp(Math.abs(weight.logOdds())) >= UNMOVED;
  }

  /** The factor of a natural logarithm, with two digits. */
  public static double factor(double log) {
    return rounded(Math.exp(log));
  }

  private static double rounded(double factor) {
    double step = Math.pow(10, Math.floor(Math.log10(factor)) - 1);
    return Math.round(factor / step) * step;
  }
}
