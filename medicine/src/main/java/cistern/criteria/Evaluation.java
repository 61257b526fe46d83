package cistern.criteria;

import cistern.fact.Grounds;
import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One edition applied to one person.
 *
 * @param rulings the edition
 * @param evidence what the clinician knows
 * @param fluid what the fluid says
 * @param betterExplanation what a stated better explanation rests on
 */
record Evaluation(
    Rulings rulings, Evidence evidence, CsfPositivity fluid, Grounds betterExplanation) {

  private static final String CONTRADICTION = "the evidence contradicts itself";
  static final String WAITING =
      "what was found first must be explained before the criteria are read";
  private static final String CONSULT =
      "two or more attacks in fewer than two regions: consult the published criteria";

  private Edition edition() {
    return rulings.edition();
  }

  private Known known() {
    return Known.of(evidence, evidence.presentation(), fluid.bands(), fluid.csf());
  }

  /** The same of somebody who came with an attack. */
  private Evaluation ofAttack() {
    return new Evaluation(
        rulings, evidence.withPresentation(Presentation.ATTACK), fluid, betterExplanation);
  }

  private boolean isBetterExplained() {
    return evidence.answer(Item.NO_BETTER_EXPLANATION) == Answer.NO;
  }

  /** The verdict alone. */
  CriteriaVerdict verdict() {
    if (isBetterExplained()) {
      return CriteriaVerdict.NOT_MET;
    }
    return evidence.presentation() == Presentation.UNKNOWN || !evidence.contradictions().isEmpty()
        ? CriteriaVerdict.UNDETERMINED
        : rulings.survey(known()).verdict();
  }

  /** The verdict alone, while something waits for an explanation. */
  CriteriaVerdict whenContradicted() {
    return isBetterExplained() ? CriteriaVerdict.NOT_MET : CriteriaVerdict.UNDETERMINED;
  }

  /** What would settle it; nothing where it is settled, or nothing can. */
  Rulings.Missing missing() {
    if (isBetterExplained() || !evidence.contradictions().isEmpty()) {
      return Rulings.Missing.NOTHING;
    }
    return evidence.presentation() == Presentation.UNKNOWN
        ? ofAttack().withPresentation()
        : rulings.missing(known());
  }

  /** The result while something waits for an explanation. */
  CriteriaResult contradicted() {
    if (isBetterExplained()) {
      return result();
    }
    List<List<Item>> explanation = List.of(List.of(Item.NO_BETTER_EXPLANATION));
    return new CriteriaResult(
        edition().year(),
        edition().ruleSet(),
        CriteriaVerdict.UNDETERMINED,
        List.of(),
        Optional.empty(),
        betterExplanation,
        explanation,
        explanation,
        checklist(evidence.presentation()),
        WAITING);
  }

  /** The result. */
  CriteriaResult result() {
    if (isBetterExplained()) {
      return without(CriteriaVerdict.NOT_MET, betterExplanation, "a better explanation was stated");
    }
    if (!evidence.contradictions().isEmpty()) {
      return without(CriteriaVerdict.UNDETERMINED, Grounds.MEASURED, CONTRADICTION);
    }
    return evidence.presentation() == Presentation.UNKNOWN
        ? ofUnknownPresentation()
        : of(evidence.presentation());
  }

  private CriteriaResult without(CriteriaVerdict verdict, Grounds grounds, String note) {
    return new CriteriaResult(
        edition().year(),
        edition().ruleSet(),
        verdict,
        List.of(),
        Optional.empty(),
        grounds,
        List.of(),
        List.of(),
        checklist(evidence.presentation()),
        note);
  }

  private CriteriaResult of(Presentation presentation) {
    Known known = known();
    Survey survey = rulings.survey(known);
    boolean isMet = survey.verdict() == CriteriaVerdict.MET;
    Rulings.Missing missing = rulings.missing(known);
    return new CriteriaResult(
        edition().year(),
        edition().ruleSet(),
        survey.verdict(),
        isMet ? survey.rows().stream().map(Row::id).toList() : List.of(),
        isMet
            ? edition().disseminationInTime(new Completion(presentation, known.low()))
            : Optional.empty(),
        grounds(presentation, survey),
        missing.toMet(),
        missing.toNotMet(),
        checklist(presentation),
        note(presentation, survey));
  }

  /** The sets of an attack, each with the presentation added. */
  private CriteriaResult ofUnknownPresentation() {
    Evaluation attack = ofAttack();
    Rulings.Missing missing = missing();
    return new CriteriaResult(
        edition().year(),
        edition().ruleSet(),
        CriteriaVerdict.UNDETERMINED,
        List.of(),
        Optional.empty(),
        attack.grounds(),
        missing.toMet(),
        missing.toNotMet(),
        attack.checklist(Presentation.ATTACK),
        edition().note(Presentation.UNKNOWN, CriteriaVerdict.UNDETERMINED));
  }

  private Rulings.Missing withPresentation() {
    return evidence.contradictions().isEmpty()
        ? rulings.withPresentation(known())
        : Rulings.Missing.NOTHING;
  }

  /** What the result rests on. */
  private Grounds grounds() {
    return evidence.contradictions().isEmpty()
        ? grounds(evidence.presentation(), rulings.survey(known()))
        : Grounds.MEASURED;
  }

  private Grounds grounds(Presentation presentation, Survey survey) {
    boolean isFluidRead = survey.rows().stream().anyMatch(Row::isReadingFluid);
    Grounds rows = survey.rows().stream().map(Row::grounds).reduce(Grounds.MEASURED, Grounds::and);
    if (survey.verdicts().contains(CriteriaVerdict.UNDETERMINED) || survey.rows().isEmpty()) {
      rows = rows.and(edition().groundsWithoutRow(presentation));
      isFluidRead |= edition().reads(presentation).stream().anyMatch(this::isFluid);
    }
    if (!isFluidRead) {
      return rows;
    }
    return rows.and(
        edition().reads(presentation).contains(Item.BANDS)
            ? fluid.bandsGrounds()
            : fluid.csfGrounds());
  }

  private boolean isFluid(Item item) {
    return item.kind() == Item.Kind.FLUID;
  }

  private String note(Presentation presentation, Survey survey) {
    String note = edition().note(presentation, survey.verdict());
    boolean isUnresolved =
        presentation == Presentation.ATTACK
            && survey.verdicts().contains(CriteriaVerdict.UNDETERMINED);
    List<String> parts = new ArrayList<>(note.isEmpty() ? List.of() : List.of(note));
    if (isUnresolved) {
      parts.add(CONSULT);
    }
    if (edition().reads(presentation).stream().anyMatch(this::isFluid)) {
      parts.addAll(fluid.remarks());
    }
    return String.join("; ", parts);
  }

  private List<Checked> checklist(Presentation presentation) {
    return edition().reads(presentation).stream()
        .map(item -> new Checked(item, answer(item), shown(item)))
        .toList();
  }

  private Answer answer(Item item) {
    return switch (item) {
      case ATTACKS -> answer(evidence.attacks());
      case OBJECTIVE_LESIONS -> answer(evidence.objectiveLesions());
      case BANDS -> fluid.bands();
      case CSF_POSITIVE -> fluid.csf();
      case PRESENTATION,
          NO_BETTER_EXPLANATION,
          HISTORICAL_ATTACK,
          PROGRESSION_TWELVE_MONTHS,
          PERIVENTRICULAR,
          CORTICAL_JUXTACORTICAL,
          INFRATENTORIAL,
          SPINAL_CORD,
          OPTIC_NERVE,
          CORD_LESIONS_TWO_OR_MORE,
          NEW_OR_MIXED_LESIONS,
          CENTRAL_VEIN_SIGN,
          PARAMAGNETIC_RIM,
          VASCULAR_RISK,
          HEADACHE_DISORDER ->
          evidence.answer(item);
    };
  }

  private static Answer answer(Count count) {
    if (count.lowLevel() == Count.TWO_OR_MORE) {
      return Answer.YES;
    }
    return count.highLevel() < Count.TWO_OR_MORE ? Answer.NO : Answer.UNKNOWN;
  }

  private String shown(Item item) {
    return switch (item.kind()) {
      case COUNT ->
          (item == Item.ATTACKS ? evidence.attacks() : evidence.objectiveLesions()).toText();
      case FLUID -> fluid.shown(item);
      case PRESENTATION, ANSWER, LESION -> answer(item).word();
    };
  }
}
