package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Analyte;
import java.util.List;
import java.util.Optional;

/**
 * The hyperbolic limits of one quotient: immunoglobulins by the constants of 1994 (Reiber, J Neurol
 * Sci) or, by policy, those of 1987 (Reiber and Felgenhauer, Clin Chim Acta, which prints the upper
 * ones alone), κ light chains by those of 2019 (Reiber, Clin Chim Acta).
 *
 * @param rule the name of the published set
 * @param upper Qlim: mean + 3 SD of people without synthesis
 * @param mean Qmean, where it is known
 * @param lower Qlow, under which a quotient is implausible, where it is known
 * @param grounds what the verdict rests on
 */
public record QuotientLimits(
    String rule,
    Hyperbola upper,
    Optional<Hyperbola> mean,
    Optional<Hyperbola> lower,
    Grounds grounds) {

  /** The key by which policy chooses the constants of the immunoglobulins. */
  public static final String RULE_KEY = "immunoglobulin-quotient.limit-rule";

  /** The rules of the immunoglobulins, as policy names them. */
  public static final List<String> RULES = List.of("reiber-1994", "reiber-1987");

  private static final String REIBER_2019 = "reiber-2019";

  /** The limits of an immunoglobulin or of κ. */
  public static QuotientLimits of(Facts facts, Analyte analyte) {
    String rule = analyte == Analyte.KAPPA ? REIBER_2019 : facts.word(RULE_KEY);
    String key = rule + "." + analyte.code();
    Optional<String> lower = known(facts, key + ".lower");
    Grounds upper = grounds(facts, key + ".upper");
    return new QuotientLimits(
        rule,
        Hyperbola.of(facts, key + ".upper"),
        known(facts, key + ".mean").map(mean -> Hyperbola.of(facts, mean)),
        lower.map(low -> Hyperbola.of(facts, low)),
        lower.map(low -> upper.and(grounds(facts, low))).orElse(upper));
  }

  /** A curve that the rule prints. */
  private static Optional<String> known(Facts facts, String curve) {
    return Optional.of(curve).filter(c -> facts.find(c + ".slope").isPresent());
  }

  private static Grounds grounds(Facts facts, String curve) {
    return facts.grounds(curve + ".slope", curve + ".b-squared", curve + ".c");
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
