package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import cistern.measurement.Interval;
import java.util.List;

/** Limits of the albumin quotient under 18 years by age, from an assay maker's handbook. */
public final class ChildrensTable implements AgeLimit {

  /** The rule's name. */
  public static final String RULE = "childrens-table";

  private static final List<String> BANDS =
      List.of(
          "under-1-month",
          "under-2-months",
          "under-3-months",
          "under-4-months",
          "under-7-years",
          "under-16-years",
          "under-18-years");
  private static final String ELSEWHERE = "albumin-quotient." + RULE + ".elsewhere";
  private static final double MONTHS_PER_YEAR = 12;
  private static final double PER_THOUSAND = 1e-3;

  private final Facts facts;

  ChildrensTable(Facts facts) {
    this.facts = facts;
  }

  @Override
  public String rule() {
    return RULE;
  }

  @Override
  public Limits at(double ageYears) {
    String band =
        BANDS.stream()
            .map(ChildrensTable::key)
            .filter(key -> ageYears < facts.number(key + ".age") / MONTHS_PER_YEAR)
            .findFirst()
            .orElse(key(BANDS.getLast()));
    Limits upper = Limits.upper(Threshold.over(facts.number(band + ".upper") * PER_THOUSAND));
    return facts.find(band + ".lower").isPresent()
        ? upper.withLower(facts.number(band + ".lower") * PER_THOUSAND)
        : upper;
  }

  /** What another laboratory's lower limit would say of a low quotient; empty where it agrees. */
  String difference(double ageYears, Interval low) {
    double months = ageYears * MONTHS_PER_YEAR;
    boolean hasOther =
        months >= facts.number(ELSEWHERE + ".from") && months < facts.number(ELSEWHERE + ".to");
    double other = facts.number(ELSEWHERE + ".lower") * PER_THOUSAND;
    return hasOther && Limits.lower(other).judge(low) == Verdict.WITHIN
        ? "laboratories differ: by another's lower limit at this age, %s × 10⁻³, it is within"
            .formatted(Printed.quotient(other))
        : "";
  }

  @Override
  public Grounds grounds() {
    return facts.grounds(key(BANDS.getFirst()) + ".upper");
  }

  private static String key(String band) {
    return "albumin-quotient." + RULE + "." + band;
  }
}
