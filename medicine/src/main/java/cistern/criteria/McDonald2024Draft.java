package cistern.criteria;

import static cistern.criteria.Item.ATTACKS;
import static cistern.criteria.Item.CENTRAL_VEIN_SIGN;
import static cistern.criteria.Item.CORTICAL_JUXTACORTICAL;
import static cistern.criteria.Item.CSF_POSITIVE;
import static cistern.criteria.Item.INFRATENTORIAL;
import static cistern.criteria.Item.NEW_OR_MIXED_LESIONS;
import static cistern.criteria.Item.NO_BETTER_EXPLANATION;
import static cistern.criteria.Item.OPTIC_NERVE;
import static cistern.criteria.Item.PARAMAGNETIC_RIM;
import static cistern.criteria.Item.PERIVENTRICULAR;
import static cistern.criteria.Item.SPINAL_CORD;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The 2024 revision as far as it could be read (Montalban 2025, Lancet Neurol 24:850–865, with the
 * erratum 24(11):e13; Barkhof 2025, Lancet Neurol 24:866–879). The optic nerve is the fifth region;
 * bands or a raised κ index count alike. Where a row is not resolved the verdict says to consult
 * the published criteria.
 */
final class McDonald2024Draft implements Edition {

  private static final String ROW = "mcdonald-2024.row.";
  private static final String CONSULT = "consult the published criteria";
  private static final Set<Item> ISOLATED_READS =
      EnumSet.of(
          NO_BETTER_EXPLANATION,
          PERIVENTRICULAR,
          CORTICAL_JUXTACORTICAL,
          INFRATENTORIAL,
          SPINAL_CORD,
          OPTIC_NERVE,
          NEW_OR_MIXED_LESIONS,
          CSF_POSITIVE,
          CENTRAL_VEIN_SIGN);
  private static final Set<Item> ATTACK_READS = attackReads();

  private final int regionsAlone;
  private final int regionsInSpace;
  private final int regionsFewest;
  private final List<Row> rows;
  private final Facts facts;

  McDonald2024Draft(Facts facts) {
    this.facts = facts;
    regionsAlone = (int) facts.number("mcdonald-2024.24-A.regions");
    regionsInSpace = (int) facts.number("mcdonald-2024.dissemination-in-space.regions");
    regionsFewest = (int) facts.number("mcdonald-2024.24-C.regions");
    rows =
        List.of(
            row("24-A", c -> isTypical(c) && regions(c) >= regionsAlone),
            fluidRow("24-B", c -> isTypical(c) && isInSpaceOnly(c) && isSupported(c)),
            fluidRow("24-C", c -> isTypical(c) && isFewest(c) && isTwiceSupported(c)),
            fluidRow("24-D", c -> isIsolated(c) && regions(c) >= regionsInSpace && isSupported(c)),
            row("24-E", c -> isTypical(c) && c.isYes(ATTACKS) && regions(c) >= regionsInSpace));
  }

  private static Set<Item> attackReads() {
    Set<Item> reads = EnumSet.copyOf(ISOLATED_READS);
    reads.add(ATTACKS);
    reads.add(PARAMAGNETIC_RIM);
    return reads;
  }

  private Row row(String id, Predicate<Completion> condition) {
    return new Row(id, condition, false, facts.grounds(ROW + id));
  }

  private Row fluidRow(String id, Predicate<Completion> condition) {
    return new Row(id, condition, true, facts.grounds(ROW + id));
  }

  private static boolean isTypical(Completion c) {
    return c.presentation() == Presentation.ATTACK;
  }

  private static boolean isIsolated(Completion c) {
    return c.presentation() == Presentation.NONE || c.presentation() == Presentation.NON_SPECIFIC;
  }

  private static int regions(Completion c) {
    return c.count(
        PERIVENTRICULAR, CORTICAL_JUXTACORTICAL, INFRATENTORIAL, SPINAL_CORD, OPTIC_NERVE);
  }

  private boolean isInSpaceOnly(Completion c) {
    int regions = regions(c);
    return regions >= regionsInSpace && regions < regionsAlone;
  }

  private boolean isFewest(Completion c) {
    int regions = regions(c);
    return regions >= regionsFewest && regions < regionsInSpace;
  }

  private static boolean isSupported(Completion c) {
    return c.count(NEW_OR_MIXED_LESIONS, CSF_POSITIVE, CENTRAL_VEIN_SIGN) > 0;
  }

  private static boolean isTwiceSupported(Completion c) {
    return c.count(NEW_OR_MIXED_LESIONS, CSF_POSITIVE) > 0
        && c.count(CENTRAL_VEIN_SIGN, PARAMAGNETIC_RIM) > 0;
  }

  @Override
  public String year() {
    return "2024";
  }

  @Override
  public String ruleSet() {
    return "McDonald2024draft";
  }

  @Override
  public List<Row> rows() {
    return rows;
  }

  @Override
  public Set<Item> reads(Presentation presentation) {
    return switch (presentation) {
      case ATTACK -> ATTACK_READS;
      case NONE, NON_SPECIFIC -> ISOLATED_READS;
      case PROGRESSION -> EnumSet.of(NO_BETTER_EXPLANATION);
      case ATYPICAL, UNKNOWN -> Set.of();
    };
  }

  @Override
  public CriteriaVerdict withoutRow(Completion completion) {
    return switch (completion.presentation()) {
      case ATTACK ->
          completion.isYes(ATTACKS) ? CriteriaVerdict.UNDETERMINED : CriteriaVerdict.NOT_MET;
      case NONE, NON_SPECIFIC -> CriteriaVerdict.NOT_MET;
      case PROGRESSION, ATYPICAL, UNKNOWN -> CriteriaVerdict.UNDETERMINED;
    };
  }

  @Override
  public Grounds groundsWithoutRow(Presentation presentation) {
    return switch (presentation) {
      case ATTACK, UNKNOWN ->
          facts.grounds(ROW + "24-B", ROW + "24-C", ROW + "24-E", ROW + "24-E-other");
      case NONE, NON_SPECIFIC -> facts.grounds(ROW + "24-D");
      case PROGRESSION -> facts.grounds(ROW + "24-F");
      case ATYPICAL -> facts.grounds("mcdonald-2024.not-applicable");
    };
  }

  @Override
  public boolean isUnresolved(Presentation presentation) {
    return presentation == Presentation.PROGRESSION;
  }

  @Override
  public String note(Presentation presentation, CriteriaVerdict verdict) {
    return switch (presentation) {
      case ATTACK, NONE, NON_SPECIFIC ->
          verdict == CriteriaVerdict.NOT_MET
              ? "possible MS: criteria not met; unconfirmed, since this edition was not read in"
                  + " full"
              : "";
      case PROGRESSION -> "progression from onset: " + CONSULT;
      case ATYPICAL -> "criteria not applicable to this presentation";
      case UNKNOWN -> "the kind of presentation is missing";
    };
  }

  @Override
  public Optional<DisseminationInTime> disseminationInTime(Completion completion) {
    return Optional.empty();
  }
}
