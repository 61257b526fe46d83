package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Limits;
import cistern.finding.Threshold;
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

  @Override
  public Grounds grounds() {
    return facts.grounds(key(BANDS.getFirst()) + ".upper");
  }

  private static String key(String band) {
    return "albumin-quotient." + RULE + "." + band;
  }
}
