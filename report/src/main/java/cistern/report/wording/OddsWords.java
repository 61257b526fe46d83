package cistern.report.wording;

import cistern.differential.Proportion;
import cistern.differential.Weight;
import cistern.finding.Printed;

/** How much a finding moves the odds, in words. */
public final class OddsWords {

  private static final double UNMOVED = 1.05;

  /** Beyond it only the tail of a belief speaks. */
  private static final double MOST_SHOWN = 1000;

  private OddsWords() {}

  /** {@code makes MS 4 times more likely (2 to 9 times)}, or why it is not counted. */
  public static String of(Weight weight) {
    if (!weight.isCounted()) {
      return weight.note().orElse("not counted");
    }
    double log = weight.logOdds().orElse(0);
    String interval = weight.interval95().map(OddsWords::interval).orElse("");
    if (Math.exp(Math.abs(log)) < UNMOVED) {
      return "hardly moves MS" + interval;
    }
    return "makes MS %s times %s likely%s"
        .formatted(
            Printed.significant(rounded(Math.exp(Math.abs(log)))),
            log > 0 ? "more" : "less",
            interval);
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

  private static double rounded(double factor) {
    double step = Math.pow(10, Math.floor(Math.log10(factor)) - 1);
    return Math.round(factor / step) * step;
  }
}
