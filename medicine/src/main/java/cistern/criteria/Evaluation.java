package cistern.criteria;

import cistern.fact.Grounds;
import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One edition applied to one person.
 *
 * @param edition the edition
 * @param evidence what the clinician knows
 * @param fluid what the fluid says
 * @param betterExplanation what a stated better explanation rests on
 */
record Evaluation(
    Edition edition, Evidence evidence, CsfPositivity fluid, Grounds betterExplanation) {

  private static final String CONTRADICTION = "the evidence contradicts itself";
  static final String WAITING =
      "what was found first must be explained before the criteria are read";
  private static final String CONSULT =
      "two or more attacks in fewer than two regions: consult the published criteria";

  /** The result while something waits for an explanation. */
  CriteriaResult contradicted() {
    if (evidence.answer(Item.NO_BETTER_EXPLANATION) == Answer.NO) {
      return result();
    }
    List<List<Item>> explanation = List.of(List.of(Item.NO_BETTER_EXPLANATION));
    return new CriteriaResult(
        edition.year(),
        edition.ruleSet(),
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
    if (evidence.answer(Item.NO_BETTER_EXPLANATION) == Answer.NO) {
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
        edition.year(),
        edition.ruleSet(),
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
    Known known = Known.of(evidence, presentation, fluid.bands(), fluid.csf());
    Survey survey = Survey.of(edition, known);
    CriteriaVerdict verdict = survey.verdict();
    boolean isOpen = verdict == CriteriaVerdict.UNDETERMINED;
    boolean isMet = verdict == CriteriaVerdict.MET;
    return new CriteriaResult(
        edition.year(),
        edition.ruleSet(),
        verdict,
        isMet ? survey.rows().stream().map(Row::id).toList() : List.of(),
        isMet
            ? edition.disseminationInTime(new Completion(presentation, known.low()))
            : Optional.empty(),
        grounds(presentation, survey),
        isOpen ? SufficientSets.toMet(edition, known) : List.of(),
        isOpen ? SufficientSets.toNotMet(edition, known) : List.of(),
        checklist(presentation),
        note(presentation, survey));
  }

  /** The sets of an attack, each with the presentation added. */
  private CriteriaResult ofUnknownPresentation() {
    Evaluation attack =
        new Evaluation(
            edition, evidence.withPresentation(Presentation.ATTACK), fluid, betterExplanation);
    boolean isPossible = attack.evidence.contradictions().isEmpty();
    CriteriaResult result = attack.result();
    return new CriteriaResult(
        edition.year(),
        edition.ruleSet(),
        CriteriaVerdict.UNDETERMINED,
        List.of(),
        Optional.empty(),
        result.grounds(),
        isPossible ? withPresentation(result, CriteriaVerdict.MET, result.missing()) : List.of(),
        isPossible
            ? withPresentation(result, CriteriaVerdict.NOT_MET, result.missingAgainst())
            : List.of(),
        attack.checklist(Presentation.ATTACK),
        edition.note(Presentation.UNKNOWN, CriteriaVerdict.UNDETERMINED));
  }

  private static List<List<Item>> withPresentation(
      CriteriaResult attack, CriteriaVerdict wanted, List<List<Item>> sets) {
    if (attack.verdict() == wanted) {
      return List.of(List.of(Item.PRESENTATION));
    }
    return SufficientSets.ordered(
        sets.stream()
            .map(set -> Stream.concat(Stream.of(Item.PRESENTATION), set.stream()).toList())
            .toList());
  }

  private Grounds grounds(Presentation presentation, Survey survey) {
    boolean isFluidRead = survey.rows().stream().anyMatch(Row::isReadingFluid);
    Grounds rows = survey.rows().stream().map(Row::grounds).reduce(Grounds.MEASURED, Grounds::and);
    if (survey.verdicts().contains(CriteriaVerdict.UNDETERMINED) || survey.rows().isEmpty()) {
      rows = rows.and(edition.groundsWithoutRow(presentation));
      isFluidRead |= edition.reads(presentation).stream().anyMatch(this::isFluid);
    }
    if (!isFluidRead) {
      return rows;
    }
    return rows.and(
        edition.reads(presentation).contains(Item.BANDS)
            ? fluid.bandsGrounds()
            : fluid.csfGrounds());
  }

  private boolean isFluid(Item item) {
    return item.kind() == Item.Kind.FLUID;
  }

  private String note(Presentation presentation, Survey survey) {
    String note = edition.note(presentation, survey.verdict());
    boolean isUnresolved =
        presentation == Presentation.ATTACK
            && survey.verdicts().contains(CriteriaVerdict.UNDETERMINED);
    List<String> parts = new ArrayList<>(note.isEmpty() ? List.of() : List.of(note));
    if (isUnresolved) {
      parts.add(CONSULT);
    }
    if (edition.reads(presentation).stream().anyMatch(this::isFluid)) {
      parts.addAll(fluid.remarks());
    }
    return String.join("; ", parts);
  }

  private List<Checked> checklist(Presentation presentation) {
    return edition.reads(presentation).stream()
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
