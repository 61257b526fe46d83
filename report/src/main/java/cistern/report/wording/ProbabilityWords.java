package cistern.report.wording;

import cistern.differential.CohortContext;
import cistern.differential.Prior;
import cistern.differential.Probability;
import cistern.differential.Proportion;
import cistern.finding.Printed;
import java.util.List;
import java.util.stream.Stream;

/** The probability after the fluid in whole sentences, or why there is none. */
public final class ProbabilityWords {

  private static final double PER_CENT = 100;

  /** A wider interval than this has no central value worth printing. */
  private static final double WIDE = 0.5;

  private ProbabilityWords() {}

  /** What is said of it, a sentence each. */
  public static List<String> of(Probability probability) {
    return probability
        .given()
        .map(given -> given(probability, given))
        .orElseGet(
            () -> List.of("No probability: " + ended(probability.reason().orElse("not known"))));
  }

  private static String ended(String reason) {
    return reason.endsWith(".") ? reason : reason + ".";
  }

  private static List<String> given(Probability probability, Probability.Given given) {
    Prior prior = probability.prior().orElseThrow();
    Proportion.Ends ends = given.interval95();
    String stated =
        "In published cohorts of a first attack, with the probability that you stated (%s %%; %s),"
            .formatted(
                prior.low() == prior.high()
                    ? percent(prior.low())
                    : percent(prior.low()) + " to " + percent(prior.high()),
                probability.context().filter(c -> c == CohortContext.MRI_NOT_USED).isPresent()
                    ? "imaging not counted in it"
                    : "imaging counted in it");
    String point =
        ends.upper() - ends.lower() > WIDE ? "" : "; central value " + percent(given.point());
    String marker = (given.isFound() ? "with " : "without ") + given.marker().term();
    String said =
        stated
            + " between %s and %s of 100 people %s had a second attack or new lesions within 2 to 8 years%s."
                .formatted(percent(ends.lower()), percent(ends.upper()), marker, point);
    return Stream.of(said, unsettled(prior, ends, given))
        .filter(sentence -> !sentence.isEmpty())
        .toList();
  }

  private static String unsettled(Prior prior, Proportion.Ends ends, Probability.Given given) {
    boolean isHeld = ends.lower() <= prior.middle() && prior.middle() <= ends.upper();
    String marker =
        switch (given.marker()) {
          case BANDS -> "The bands do not settle it.";
          case KAPPA_INDEX -> "The κ index does not settle it.";
        };
    return isHeld ? marker : "";
  }

  private static String percent(double share) {
    return Printed.decimals(share * PER_CENT, 0);
  }
}
