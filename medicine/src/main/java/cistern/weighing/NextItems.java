package cistern.weighing;

import cistern.analysis.Puncture;
import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.criteria.Burden;
import cistern.criteria.CsfPositivity;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Outlook;
import cistern.criteria.Presentation;
import cistern.differential.Observations;
import cistern.differential.Outcome;
import cistern.differential.Trait;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Everything that is missing, ranked by what it is expected to tell for what it costs the person.
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
  private final Weighing.Sources from;
  private final Outlook outlook;
  private final List<NextItem> items = new ArrayList<>();

  NextItems(
      Puncture puncture,
      ClinicalPicture clinical,
      CsfPositivity fluid,
      Observations heard,
      Weighing.Sources from) {
    this.puncture = puncture;
    this.clinical = clinical;
    this.fluid = fluid;
    this.heard = heard;
    this.from = from;
    outlook = from.criteria().outlook(clinical.evidence(), fluid, chances());
  }

  private Outlook.Chances chances() {
    double other = from.facts().number("next.chance-unknown");
    return heard.has(Trait.BANDS)
        ? new Outlook.Chances(other, other)
        : new Outlook.Chances(
            from.differential().outcome(heard, clinical.prior(), Trait.BANDS).chanceFound(), other);
  }

  /** The items, most telling for their burden first. */
  List<NextItem> ranked() {
    addEvidence();
    addBands();
    addKappa();
    addBlood();
    addSameSample();
    addRepeat();
    double least = from.facts().number("next.least-information");
    return items.stream()
        .filter(item -> item.informationBits() >= least)
        .sorted(
            Comparator.<NextItem>comparingDouble(i -> -i.informationBits() / cost(i.burden()))
                .thenComparing(NextItem::item))
        .toList();
  }

  private double cost(Burden burden) {
    return from.facts().number("burden." + burden.word());
  }

  private void addEvidence() {
    boolean isUnknown = clinical.evidence().presentation() == Presentation.UNKNOWN;
    double ofVerdict = isUnknown ? outlook.openness() : outlook.information(HISTORY);
    items.add(
        new NextItem(
            "history",
            ofVerdict,
            0,
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
    items.add(
        new NextItem(
            item, outlook.information(asked), 0, burden, text + unknown(asked, false) + "."));
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
    return isSampleThere() && isSerumThere() && !puncture.isPairInvalid();
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
    double ofDisease =
        from.differential().outcome(heard, clinical.prior(), Trait.BANDS).information();
    items.add(new NextItem(item, outlook.information(FLUID), ofDisease, burden, text));
  }

  private void addKappa() {
    boolean isMeasured = puncture.has(Sample.csf(Analyte.KAPPA));
    if (isMeasured || heard.has(Trait.KAPPA_INDEX) || !isPairThere()) {
      return;
    }
    double ofDisease =
        from.differential().outcome(heard, clinical.prior(), Trait.KAPPA_INDEX).information();
    items.add(
        new NextItem(
            "kappa-flc",
            outlook.information(KAPPA),
            ofDisease,
            Burden.SAME_SAMPLE,
            "κ free light chains and albumin in the CSF and serum at hand."));
  }

  private void addBlood() {
    addTrait(Trait.MOG_IGG, "mog-igg", Burden.BLOOD, "MOG antibodies in serum.");
    addTrait(Trait.AQP4_IGG, "aqp4-igg", Burden.BLOOD, "Aquaporin-4 antibodies in serum.");
  }

  private void addSameSample() {
    if (isPairThere() && !puncture.verdict(FindingCode.MRZ_REACTION).isDecided()) {
      addTrait(
          Trait.MRZ_REACTION,
          "mrz-reaction",
          Burden.SAME_SAMPLE,
          "Measles, rubella and varicella-zoster antibody indices from the samples at hand.");
    }
    boolean isInflamed = puncture.isAbove(FindingCode.LEUKOCYTES);
    if (isInflamed
        && isPairThere()
        && !puncture.verdict(FindingCode.BORRELIA_ANTIBODY_INDEX).isDecided()) {
      addTrait(
          Trait.BORRELIA,
          "borrelia-antibody-index",
          Burden.SAME_SAMPLE,
          "Borrelia antibody index from the samples at hand.");
    }
  }

  private void addTrait(Trait trait, String item, Burden burden, String text) {
    if (!heard.has(trait)) {
      double ofDisease = from.differential().outcome(heard, clinical.prior(), trait).information();
      items.add(new NextItem(item, 0, ofDisease, burden, text));
    }
  }

  /** A second puncture, where the first showed no bands or too few. */
  private void addRepeat() {
    boolean isTooFew = puncture.bands().verdict() == BandVerdict.BORDERLINE;
    if (fluid.bands() != Answer.NO && !isTooFew) {
      return;
    }
    Outcome outcome = from.differential().outcomeOfRepeat(heard, clinical.prior());
    double other = from.facts().number("next.chance-unknown");
    double ofVerdict =
        from.criteria()
            .outlook(
                clinical.evidence(),
                fluid.with(Answer.UNKNOWN),
                new Outlook.Chances(outcome.chanceFound(), other))
            .information(FLUID);
    items.add(
        new NextItem(
            "repeat-puncture",
            ofVerdict,
            outcome.information(),
            Burden.PUNCTURE,
            "Repeat the puncture with paired serum, if the suspicion stays high."));
  }
}
