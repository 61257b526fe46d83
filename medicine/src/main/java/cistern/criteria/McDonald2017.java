package cistern.criteria;

import static cistern.criteria.Item.ATTACKS;
import static cistern.criteria.Item.BANDS;
import static cistern.criteria.Item.CORD_LESIONS_TWO_OR_MORE;
import static cistern.criteria.Item.CORTICAL_JUXTACORTICAL;
import static cistern.criteria.Item.HISTORICAL_ATTACK;
import static cistern.criteria.Item.INFRATENTORIAL;
import static cistern.criteria.Item.NEW_OR_MIXED_LESIONS;
import static cistern.criteria.Item.NO_BETTER_EXPLANATION;
import static cistern.criteria.Item.OBJECTIVE_LESIONS;
import static cistern.criteria.Item.PERIVENTRICULAR;
import static cistern.criteria.Item.PROGRESSION_TWELVE_MONTHS;
import static cistern.criteria.Item.SPINAL_CORD;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The 2017 revision (Thompson 2018, Lancet Neurol 17:162–173; rows as reproduced in PMC7385797,
 * table 2, and PMC10092602, table 1). The optic nerve is no region; CSF-only bands stand in for
 * dissemination in time and do not demonstrate it.
 */
final class McDonald2017 implements Edition {

  private static final String ROW = "mcdonald-2017.row.";
  private static final Set<Item> ATTACK_READS =
      EnumSet.of(
          NO_BETTER_EXPLANATION,
          ATTACKS,
          OBJECTIVE_LESIONS,
          HISTORICAL_ATTACK,
          PERIVENTRICULAR,
          CORTICAL_JUXTACORTICAL,
          INFRATENTORIAL,
          SPINAL_CORD,
          NEW_OR_MIXED_LESIONS,
          BANDS);
  private static final Set<Item> PROGRESSION_READS =
      EnumSet.of(
          NO_BETTER_EXPLANATION,
          PROGRESSION_TWELVE_MONTHS,
          PERIVENTRICULAR,
          CORTICAL_JUXTACORTICAL,
          INFRATENTORIAL,
          CORD_LESIONS_TWO_OR_MORE,
          BANDS);

  private final int regionsInSpace;
  private final int itemsInProgression;
  private final List<Row> rows;
  private final Facts facts;

  McDonald2017(Facts facts) {
    this.facts = facts;
    regionsInSpace = (int) facts.number("mcdonald-2017.dissemination-in-space.regions");
    itemsInProgression = (int) facts.number("mcdonald-2017.17-P.items");
    rows =
        List.of(
            row("17-1", c -> isRepeated(c) && isTwoSites(c)),
            row("17-2", c -> isRepeated(c) && c.isOne(OBJECTIVE_LESIONS) && isHistorical(c)),
            row("17-3", c -> isRepeated(c) && c.isOne(OBJECTIVE_LESIONS) && isInSpace(c)),
            fluidRow("17-4", c -> isSingle(c) && isTwoSites(c) && isInTime(c)),
            fluidRow(
                "17-5",
                c -> isSingle(c) && c.isOne(OBJECTIVE_LESIONS) && isInSpace(c) && isInTime(c)),
            fluidRow("17-P", this::isProgressive));
  }

  private Row row(String id, Predicate<Completion> condition) {
    return new Row(id, condition, false, facts.grounds(ROW + id));
  }

  private Row fluidRow(String id, Predicate<Completion> condition) {
    return new Row(id, condition, true, facts.grounds(ROW + id));
  }

  private static boolean isRepeated(Completion c) {
    return c.presentation() == Presentation.ATTACK && c.isYes(ATTACKS);
  }

  private static boolean isSingle(Completion c) {
    return c.presentation() == Presentation.ATTACK && c.isOne(ATTACKS);
  }

  private static boolean isTwoSites(Completion c) {
    return c.isYes(OBJECTIVE_LESIONS);
  }

  private static boolean isHistorical(Completion c) {
    return c.isYes(HISTORICAL_ATTACK);
  }

  private boolean isInSpace(Completion c) {
    return c.count(PERIVENTRICULAR, CORTICAL_JUXTACORTICAL, INFRATENTORIAL, SPINAL_CORD)
        >= regionsInSpace;
  }

  private static boolean isInTime(Completion c) {
    return c.isYes(NEW_OR_MIXED_LESIONS) || c.isYes(BANDS);
  }

  private boolean isProgressive(Completion c) {
    if (c.presentation() != Presentation.PROGRESSION || !c.isYes(PROGRESSION_TWELVE_MONTHS)) {
      return false;
    }
    int brain = c.count(PERIVENTRICULAR, CORTICAL_JUXTACORTICAL, INFRATENTORIAL) > 0 ? 1 : 0;
    return brain + c.count(CORD_LESIONS_TWO_OR_MORE, BANDS) >= itemsInProgression;
  }

  @Override
  public String year() {
    return "2017";
  }

  @Override
  public String ruleSet() {
    return "McDonald2017";
  }

  @Override
  public List<Row> rows() {
    return rows;
  }

  @Override
  public Set<Item> reads(Presentation presentation) {
    return switch (presentation) {
      case ATTACK -> ATTACK_READS;
      case PROGRESSION -> PROGRESSION_READS;
      case NONE, NON_SPECIFIC, ATYPICAL, UNKNOWN -> Set.of();
    };
  }

  @Override
  public CriteriaVerdict withoutRow(Completion completion) {
    return switch (completion.presentation()) {
      case ATTACK, PROGRESSION, NONE -> CriteriaVerdict.NOT_MET;
      case NON_SPECIFIC, ATYPICAL, UNKNOWN -> CriteriaVerdict.UNDETERMINED;
    };
  }

  @Override
  public Grounds groundsWithoutRow(Presentation presentation) {
    return switch (presentation) {
      case ATTACK, PROGRESSION, UNKNOWN ->
          rows.stream()
              .filter(r -> r.id().equals("17-P") == (presentation == Presentation.PROGRESSION))
              .map(Row::grounds)
              .reduce(Grounds.MEASURED, Grounds::and);
      case NONE -> facts.grounds("mcdonald-2017.no-row");
      case NON_SPECIFIC, ATYPICAL -> facts.grounds("mcdonald-2017.not-applicable");
    };
  }

  @Override
  public String note(Presentation presentation, CriteriaVerdict verdict) {
    return switch (presentation) {
      case ATTACK, PROGRESSION ->
          verdict == CriteriaVerdict.NOT_MET ? "possible MS: criteria not met" : "";
      case NONE -> "2017 has no row for a radiologically isolated finding";
      case NON_SPECIFIC, ATYPICAL -> "criteria not applicable to this presentation";
      case UNKNOWN -> "the kind of presentation is missing";
    };
  }

  @Override
  public Optional<DisseminationInTime> disseminationInTime(Completion completion) {
    if (completion.presentation() != Presentation.ATTACK) {
      return Optional.empty();
    }
    if (completion.isYes(ATTACKS)) {
      return Optional.of(DisseminationInTime.ATTACK);
    }
    return Optional.of(
        completion.isYes(NEW_OR_MIXED_LESIONS)
            ? DisseminationInTime.MRI
            : DisseminationInTime.OCB_SUBSTITUTE);
  }
}
