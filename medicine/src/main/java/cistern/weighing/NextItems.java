package cistern.weighing;

import cistern.analysis.Puncture;
import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.criteria.Burden;
import cistern.criteria.Criteria;
import cistern.criteria.CsfPositivity;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Outlook;
import cistern.criteria.Presentation;
import cistern.differential.Observations;
import cistern.differential.Probability;
import cistern.differential.Trait;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Everything that is missing, ranked by what it would change, in the criteria, the answer and the
 * urgent rules, for what it costs the person.
 */
final class NextItems {

  private static final Set<Item> HISTORY =
      EnumSet.of(
          Item.NO_BETTER_EXPLANATION,
          Item.ATTACKS,
          Item.OBJECTIVE_LESIONS,
          Item.HISTORICAL_ATTACK,
          Item.PROGRESSION_TWELVE_MONTHS);
  private static final Set<Item> IMAGES = EnumSet.of(Item.CENTRAL_VEIN_SIGN, Item.PARAMAGNETIC_RIM);
  private static final Set<Item> MRI =
      EnumSet.of(
          Item.PERIVENTRICULAR,
          Item.CORTICAL_JUXTACORTICAL,
          Item.INFRATENTORIAL,
          Item.SPINAL_CORD,
          Item.CORD_LESIONS_TWO_OR_MORE,
          Item.NEW_OR_MIXED_LESIONS);
  private static final Set<Item> OPTIC = EnumSet.of(Item.OPTIC_NERVE);
  private static final Set<Item> FLUID = EnumSet.of(Item.BANDS, Item.CSF_POSITIVE);
  private static final Set<Item> KAPPA = EnumSet.of(Item.CSF_POSITIVE);

  private final Puncture puncture;
  private final ClinicalPicture clinical;
  private final CsfPositivity fluid;
  private final Observations heard;
  private final Criteria criteria;
  private final Facts facts;
  private final Outlook outlook;
  private final List<Step> steps = new ArrayList<>();

  /**
   * One thing to do.
   *
   * @param item the name in files
   * @param bits what it tells of the criteria
   * @param isAnswer whether it could change whether antibody is made inside
   * @param isUrgent whether it could change an urgent rule
   * @param isStop whether a positive result would stop a verdict
   * @param burden what it costs the person
   * @param text what to do
   */
  private record Step(
      String item,
      double bits,
      boolean isAnswer,
      boolean isUrgent,
      boolean isStop,
      Burden burden,
      String text) {

    List<String> changes() {
      List<String> all = new ArrayList<>();
      if (bits > 0 || isStop) {
        all.add("criteria");
      }
      if (isAnswer) {
        all.add("answer");
      }
      if (isUrgent) {
        all.add("urgent");
      }
      return all;
    }
  }

  NextItems(
      Puncture puncture,
      ClinicalPicture clinical,
      CsfPositivity fluid,
      Criteria criteria,
      Facts facts) {
    this.puncture = puncture;
    this.clinical = clinical;
    this.fluid = fluid;
    heard = Observations.of(puncture.findings(), fluid.bands(), clinical.serology(), facts);
    this.criteria = criteria;
    this.facts = facts;
    outlook = outlook(fluid);
  }

  private Outlook outlook(CsfPositivity assumed) {
    double chance = facts.number("next.chance-unknown");
    return criteria.outlook(clinical.evidence(), assumed, new Outlook.Chances(chance, chance));
  }

  /** The items, those that would change most for their burden first. */
  List<NextItem> ranked(Probability probability) {
    addEvidence();
    addBands();
    addKappa();
    addBlood();
    addSameSample();
    addRepeat();
    double least = facts.number("next.least-information");
    return steps.stream()
        .filter(step -> worth(step) >= least)
        .sorted(
            Comparator.<Step>comparingDouble(s -> -worth(s) / cost(s.burden()))
                .thenComparing(Step::item))
        .map(step -> item(step, probability.given().isPresent()))
        .toList();
  }

  private static NextItem item(Step step, boolean isGiven) {
    return new NextItem(
        step.item(),
        step.changes(),
        step.bits(),
        isGiven ? OptionalDouble.of(step.bits()) : OptionalDouble.empty(),
        step.burden(),
        step.text());
  }

  private double worth(Step step) {
    return step.bits()
        + (step.isAnswer() ? facts.number("next.worth.answer") : 0)
        + (step.isUrgent() ? facts.number("next.worth.urgent") : 0)
        + (step.isStop() ? facts.number("next.worth.stop") : 0);
  }

  private double cost(Burden burden) {
    return facts.number("burden." + burden.word());
  }

  private void addEvidence() {
    boolean isUnknown = clinical.evidence().presentation() == Presentation.UNKNOWN;
    double ofVerdict = isUnknown ? outlook.openness() : outlook.information(HISTORY);
    steps.add(
        new Step(
            "history",
            ofVerdict,
            false,
            false,
            false,
            Burden.RECORD,
            "Complete the history and the examination: " + unknown(HISTORY, isUnknown) + "."));
    addCriteria("images-again", IMAGES, Burden.SAME_IMAGES, "Read the existing images again for: ");
    addCriteria("mri", MRI, Burden.NEW_TEST, "New MRI, of brain and cord, for: ");
    addCriteria(
        "optic-nerve",
        OPTIC,
        Burden.NEW_TEST,
        "Evoked potentials, optical coherence tomography or MRI for: ");
  }

  private void addCriteria(String item, Set<Item> asked, Burden burden, String text) {
    steps.add(
        new Step(
            item,
            outlook.information(asked),
            false,
            false,
            false,
            burden,
            text + unknown(asked, false) + "."));
  }

  private String unknown(Set<Item> asked, boolean isPresentation) {
    List<String> terms = new ArrayList<>();
    if (isPresentation) {
      terms.add(Item.PRESENTATION.term());
    }
    asked.stream().filter(this::isUnknown).map(Item::term).forEach(terms::add);
    return terms.isEmpty() ? "nothing" : String.join("; ", terms);
  }

  private boolean isUnknown(Item item) {
    Evidence evidence = clinical.evidence();
    return switch (item.kind()) {
      case COUNT ->
          !(item == Item.ATTACKS ? evidence.attacks() : evidence.objectiveLesions()).isKnown();
      case FLUID -> !(item == Item.BANDS ? fluid.bands() : fluid.csf()).isKnown();
      case PRESENTATION -> evidence.presentation() == Presentation.UNKNOWN;
      case ANSWER, LESION -> !evidence.answer(item).isKnown();
    };
  }

  private boolean isSampleThere() {
    return puncture.bands().isReported()
        || puncture.panel().panel().results().keySet().stream()
            .anyMatch(s -> s.in() == Compartment.CSF);
  }

  private boolean isSerumThere() {
    return puncture.bands().isReported()
        || puncture.panel().panel().serum().at().isPresent()
        || puncture.panel().panel().results().keySet().stream()
            .anyMatch(s -> s.in() == Compartment.SERUM);
  }

  /** Whether CSF and serum are at hand and may be compared. */
  private boolean isPairThere() {
    return isSampleThere() && isSerumThere() && !puncture.panel().pairing().isInvalid();
  }

  /** What would make the bands known, where they are not. */
  private void addBands() {
    if (fluid.bands().isKnown()) {
      return;
    }
    if (!isSampleThere()) {
      addFluid("puncture", Burden.PUNCTURE, "Lumbar puncture with paired serum.");
    } else if (!isPairThere()) {
      addFluid(
          "serum-redraw",
          Burden.BLOOD,
          "Draw serum to pair with the CSF, within hours of it; once that is past, a new pair.");
    } else if (!puncture.bands().isReported()) {
      addFluid("bands", Burden.SAME_SAMPLE, "Isoelectric focusing of the CSF and serum at hand.");
    } else if (!puncture.bands().isConfirmed()) {
      addFluid("confirm-gel", Burden.RECORD, "Confirm or correct the reading of the gel.");
    } else {
      addFluid(
          "repeat-focusing",
          Burden.SAME_SAMPLE,
          isLadder()
              ? "Review the gel: a ladder hides bands; serum immunofixation."
              : "Repeat the focusing on the same pair: the result is equivocal.");
    }
  }

  private boolean isLadder() {
    return puncture.bands().pattern().filter(p -> p == BandPattern.LADDER).isPresent();
  }

  private void addFluid(String item, Burden burden, String text) {
    steps.add(new Step(item, outlook.information(FLUID), true, false, false, burden, text));
  }

  private void addKappa() {
    boolean isMeasured = puncture.panel().panel().has(Sample.csf(Analyte.KAPPA));
    if (isMeasured || heard.has(Trait.KAPPA_INDEX) || !isPairThere()) {
      return;
    }
    steps.add(
        new Step(
            "kappa-flc",
            outlook.information(KAPPA),
            !fluid.bands().isKnown(),
            false,
            false,
            Burden.SAME_SAMPLE,
            "κ free light chains and albumin in the CSF and serum at hand."));
  }

  private void addBlood() {
    addStop(Trait.MOG_IGG, "mog-igg", "MOG antibodies in serum.");
    addStop(Trait.AQP4_IGG, "aqp4-igg", "Aquaporin-4 antibodies in serum.");
  }

  /** An antibody whose presence would stop every verdict on MS. */
  private void addStop(Trait trait, String item, String text) {
    if (!heard.has(trait)) {
      steps.add(new Step(item, 0, false, false, true, Burden.BLOOD, text));
    }
  }

  /** Raised cells without an index against Borrelia: an infection may be missed. */
  private void addSameSample() {
    boolean isInflamed = puncture.findings().get(FindingCode.LEUKOCYTES).isAbove();
    if (isInflamed
        && isPairThere()
        && !puncture.findings().verdict(FindingCode.BORRELIA_ANTIBODY_INDEX).isDecided()) {
      steps.add(
          new Step(
              "borrelia-antibody-index",
              0,
              false,
              true,
              false,
              Burden.SAME_SAMPLE,
              "Borrelia antibody index from the samples at hand."));
    }
  }

  /** A second puncture, where the first showed no bands or too few. */
  private void addRepeat() {
    boolean isTooFew = puncture.bands().verdict() == BandVerdict.BORDERLINE;
    if (fluid.bands() != Answer.NO && !isTooFew) {
      return;
    }
    steps.add(
        new Step(
            "repeat-puncture",
            outlook(fluid.with(Answer.UNKNOWN)).information(FLUID),
            isTooFew,
            false,
            false,
            Burden.PUNCTURE,
            "Repeat the puncture with paired serum, if the suspicion stays high."));
  }
}
