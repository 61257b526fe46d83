package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Limits;
import cistern.finding.Threshold;

/**
 * The upper limit (age/25 + 8)·10⁻³ of the albumin quotient, the 95th percentile of 332 controls
 * aged 18 to 70 (Hegen 2016, Clin Chem Lab Med); extrapolated outside these ages.
 */
public final class EightPlusAgeOverTwentyFive implements AgeLimit {

  /** The rule's name. */
  public static final String RULE = "eight-plus-age-over-twenty-five";

  private static final String BASE = "albumin-quotient." + RULE + ".base";
  private static final String PER_YEAR = "albumin-quotient." + RULE + ".years";
  private static final String OLDEST = "albumin-quotient." + RULE + ".oldest";
  private static final double PER_THOUSAND = 1e-3;

  private final double base;
  private final double years;
  private final double oldest;
  private final Grounds grounds;

  EightPlusAgeOverTwentyFive(Facts facts) {
    base = facts.number(BASE);
    years = facts.number(PER_YEAR);
    oldest = facts.number(OLDEST);
    grounds = facts.grounds(BASE, PER_YEAR);
  }

  /** Whether the rule was established at this age; adults only are asked. */
  boolean isEstablishedAt(double ageYears) {
    return ageYears <= oldest;
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
