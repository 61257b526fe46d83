package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Analyte;
import java.util.Optional;

/**
 * The hyperbolic limits of one quotient: immunoglobulins by the constants of 1994 (Reiber, J Neurol
 * Sci), κ light chains by those of 2019 (Reiber, Clin Chim Acta).
 *
 * @param rule the name of the published set
 * @param upper Qlim: mean + 3 SD of people without synthesis
 * @param mean Qmean
 * @param lower Qlow, under which a quotient is implausible, where it is known
 * @param grounds what the verdict rests on
 */
public record QuotientLimits(
    String rule, Hyperbola upper, Hyperbola mean, Optional<Hyperbola> lower, Grounds grounds) {

  private static final String REIBER_1994 = "reiber-1994";
  private static final String REIBER_2019 = "reiber-2019";

  /** The limits of an immunoglobulin or of κ. */
  public static QuotientLimits of(Facts facts, Analyte analyte) {
    boolean isKappa = analyte == Analyte.KAPPA;
    String rule = isKappa ? REIBER_2019 : REIBER_1994;
    String key = rule + "." + analyte.code();
    String low = key + ".lower";
    Optional<Hyperbola> lower = isKappa ? Optional.empty() : Optional.of(Hyperbola.of(facts, low));
    Grounds upper = facts.grounds(key + ".upper.slope", key + ".upper.b-squared", key + ".upper.c");
    Grounds grounds =
        isKappa ? upper : upper.and(facts.grounds(low + ".slope", low + ".b-squared", low + ".c"));
    return new QuotientLimits(
        rule,
        Hyperbola.of(facts, key + ".upper"),
        Hyperbola.of(facts, key + ".mean"),
        lower,
        grounds);
  }

  /** The limits of the quotient at an albumin quotient. */
  Limits at(double albuminQuotient) {
    Limits only = upperAt(albuminQuotient);
    return lower.map(l -> only.withLower(l.at(albuminQuotient))).orElse(only);
  }

  /** The upper limit alone. */
  Limits upperAt(double albuminQuotient) {
    return Limits.upper(Threshold.over(upper.at(albuminQuotient)));
  }
}
