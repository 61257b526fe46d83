package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Limits;
import cistern.finding.Threshold;

/**
 * The upper limit (4 + age/15)·10⁻³ of the albumin quotient, adults, lumbar CSF (Tumani 2020, doi
 * 10.1186/s42466-020-0051-z, figure 2).
 */
public final class FourPlusAgeOverFifteen implements AgeLimit {

  /** The rule's name. */
  public static final String RULE = "four-plus-age-over-fifteen";

  private static final String BASE = "albumin-quotient." + RULE + ".base";
  private static final String PER_YEAR = "albumin-quotient." + RULE + ".years";
  private static final double PER_THOUSAND = 1e-3;

  private final double base;
  private final double years;
  private final Grounds grounds;

  FourPlusAgeOverFifteen(Facts facts) {
    base = facts.number(BASE);
    years = facts.number(PER_YEAR);
    grounds = facts.grounds(BASE, PER_YEAR);
  }

  @Override
  public String rule() {
    return RULE;
  }

  @Override
  public Limits at(double ageYears) {
    return Limits.upper(Threshold.over((base + ageYears / years) * PER_THOUSAND));
  }

  @Override
  public Grounds grounds() {
    return grounds;
  }
}
