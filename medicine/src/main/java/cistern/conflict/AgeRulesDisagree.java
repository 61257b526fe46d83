package cistern.conflict;

import cistern.barrier.AgeLimits;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import java.util.List;

/**
 * The two published limits of the albumin quotient for adults give different verdicts.
 *
 * @param rule the rule in force
 * @param verdict its verdict
 * @param other the other rule's name
 * @param otherVerdict its verdict
 */
public record AgeRulesDisagree(String rule, Verdict verdict, String other, Verdict otherVerdict)
    implements Conflict {

  @Override
  public String code() {
    return "age-rules-disagree";
  }

  @Override
  public List<String> findings() {
    return List.of(FindingCode.ALBUMIN_QUOTIENT.code());
  }

  @Override
  public String text() {
    return "The albumin quotient is %s its limit by %s, the rule in force, and %s it by %s. The lower limit calls many healthy people leaky (Hegen 2016): a leak that only it sees is a weak finding."
        .formatted(side(verdict), words(rule), side(otherVerdict), words(other));
  }

  private static String words(String rule) {
    return AgeLimits.toWords(rule).orElse(rule);
  }

  private static String side(Verdict verdict) {
    return verdict == Verdict.ABOVE ? "above" : "within";
  }
}
