package cistern.report.wording;

import cistern.differential.Argument;
import cistern.differential.Disease;
import cistern.differential.Posterior;
import cistern.finding.Printed;
import cistern.redflag.RedFlag;
import cistern.weighing.NextItem;
import java.util.List;
import java.util.stream.Collectors;

/** Diseases, red flags and next steps, a sentence each. */
public final class DifferentialWords {

  private static final double PER_CENT = 100;

  private DifferentialWords() {}

  /** A disease with its probability and interval. */
  public static String of(Posterior posterior) {
    return "%s: %s %% (95 %% interval %s to %s %%)"
        .formatted(
            posterior.disease().term(),
            percent(posterior.probability()),
            percent(posterior.interval95().lower()),
            percent(posterior.interval95().upper()));
  }

  /** The probability of MS in a sentence, as an estimate that rests on what was stated. */
  public static String toSentence(Posterior ofMs) {
    return "From the probability stated before the puncture, published counts make multiple"
        + " sclerosis %s %% likely (95 %% interval %s to %s %%); an estimate, not a diagnosis."
            .formatted(
                percent(ofMs.probability()),
                percent(ofMs.interval95().lower()),
                percent(ofMs.interval95().upper()));
  }

  /** Whole per cent; what is not quite none or all is never printed as such. */
  private static String percent(double share) {
    if (share > 0 && share < 1 / PER_CENT) {
      return "under 1";
    }
    if (share < 1 && share > 1 - 1 / PER_CENT) {
      return "over 99";
    }
    return Printed.decimals(share * PER_CENT, 0);
  }

  /** A disease without a number: what speaks for and against it. */
  public static String of(Argument argument) {
    return "%s%s%s"
        .formatted(
            argument.disease().term(),
            reasons(": for it, ", argument.reasonsFor()),
            reasons(": against it, ", argument.reasonsAgainst()));
  }

  private static String reasons(String title, List<String> reasons) {
    return reasons.isEmpty() ? "" : title + String.join(" and ", reasons);
  }

  /** A red flag with what to think of. */
  public static String of(RedFlag flag) {
    return "%s To think of: %s."
        .formatted(
            flag.text(),
            flag.suggests().stream().map(Disease::term).collect(Collectors.joining(", ")));
  }

  /** A missing item with what it would tell and what it costs. */
  public static String of(NextItem item) {
    return "%s (%s bits, %s)"
        .formatted(
            item.text(),
            Printed.decimals(item.informationBits(), 2),
            item.burden().word().replace('-', ' '));
  }
}
