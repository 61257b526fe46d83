package cistern.report.cohort;

import cistern.cohort.ConfidenceInterval;
import cistern.differential.Proportion;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import java.util.Locale;

/** Shares and intervals as a page of a cohort prints them. */
final class CohortWords {

  static final double CONFIDENCE = 0.95;
  static final String NONE = "–";

  private static final int PER_CENT = 100;

  private CohortWords() {}

  /** {@code 12 % (7 to 20 %; 9 of 75)}. */
  static String counted(Proportion share) {
    return "%s (%s; %s of %s)"
        .formatted(
            percent(share.share()),
            interval(share),
            Printed.decimals(share.positive(), 0),
            Printed.decimals(share.of(), 0));
  }

  /** {@code 12 % (7 to 20 %)}. */
  static String share(Proportion share) {
    return percent(share.share()) + " (" + interval(share) + ")";
  }

  private static String interval(Proportion share) {
    Proportion.Ends ends = share.printed(CONFIDENCE);
    return number(PER_CENT * ends.lower()) + " to " + percent(ends.upper());
  }

  /** A share in whole per cent; with a decimal under one. */
  static String percent(double share) {
    return number(PER_CENT * share) + " %";
  }

  private static String number(double percent) {
    boolean isSmall = percent > 0 && percent < 1;
    return String.format(Locale.ROOT, isSmall ? "%.1f" : "%.0f", percent);
  }

  /** A value with its interval. */
  static String between(FindingCode code, double value, ConfidenceInterval interval) {
    return "%s (%s to %s)"
        .formatted(
            Printed.of(code, value),
            Printed.of(code, interval.lower()),
            Printed.of(code, interval.upper()));
  }

  /** A finding with the factor by which it is printed. */
  static String term(FindingCode code) {
    return switch (code.print()) {
      case QUOTIENT -> code.term() + " × 10³";
      case FRACTION, INDEX, RATE, CONCENTRATION, COUNT -> code.term();
    };
  }

  /** The first letter as a capital; a Greek letter is a name and stays. */
  static String sentence(String text) {
    boolean isLatin = text.charAt(0) < 'z';
    return (isLatin ? text.substring(0, 1).toUpperCase(Locale.ROOT) : text.substring(0, 1))
        + text.substring(1);
  }
}
