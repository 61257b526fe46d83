package cistern.urgent;

import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.bands.BandVerdict;
import cistern.barrier.BloodLimit;
import cistern.bedside.Syndrome;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.urgent.Stop.Effect;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The catalogue of what stops a verdict, in its order. */
public final class Stops {

  private static final Trigger CHILD =
      Trigger.under(Quantity.AGE_YEARS, "stop.child.age-years.under");
  private static final Trigger OLDER =
      Trigger.from(Quantity.AGE_YEARS, "stop.older.age-years.from");

  private static final Trigger ATYPICAL =
      Trigger.any(
          Trigger.over(Quantity.LEUKOCYTES, "stop.atypical.leukocytes.over"),
          Trigger.all(
              Trigger.from(Quantity.NEUTROPHIL_SHARE, "urgent.neutrophils.from"), Cues.CELLS),
          Trigger.over(Quantity.PROTEIN, "stop.atypical.protein.over"),
          Cues.GLUCOSE_RATIO_LOW,
          Cues.LACTATE_ABOVE,
          Trigger.over(Quantity.ALBUMIN_QUOTIENT, "stop.atypical.albumin-quotient.over"));

  private final Observed observed;
  private final Urgent urgent;
  private final List<Stop> stops = new ArrayList<>();

  private Stops(Observed observed, Urgent urgent) {
    this.observed = observed;
    this.urgent = urgent;
  }

  /** The stops of some observations, known before the criteria are asked. */
  public static List<Stop> check(Observed observed, Urgent urgent) {
    return new Stops(observed, urgent).all();
  }

  /** What is atypical although the criteria are met. */
  public static Optional<Stop> whenMet(Observed observed) {
    if (!ATYPICAL.answer(observed).isYes()) {
      return Optional.empty();
    }
    String values =
        ATYPICAL.reasons(observed).stream()
            .map(Reason::text)
            .distinct()
            .collect(Collectors.joining(", "));
    return Optional.of(
        stop(
            observed,
            "atypical-though-met",
            Effect.SENTENCE,
            "Formally met, but atypical (%s): better explanation to be sought.".formatted(values)));
  }

  static Stop stop(Observed observed, String code, Effect effect, String text) {
    Facts facts = observed.facts();
    return new Stop(code, effect, text, facts.grounds("stop." + code));
  }

  private void add(boolean isHolding, String code, Effect effect, String text) {
    if (isHolding) {
      stops.add(stop(observed, code, effect, text));
    }
  }

  private List<Stop> all() {
    stops.addAll(AntibodyStops.of(observed));
    add(
        isWithoutSerum(observed),
        "bands-without-serum",
        Effect.INPUT_UNKNOWN,
        "No paired serum: local synthesis cannot be told.");
    addOfSample();
    add(
        urgent.isInfectionOpen(),
        "infection-open",
        Effect.CONTRADICTION,
        waiting("Infection not excluded"));
    addOfPerson();
    add(
        urgent.isEmergencyOpen(),
        "emergency-open",
        Effect.CONTRADICTION,
        waiting("An emergency is open"));
    return List.copyOf(stops);
  }

  /** In the first months nothing is said of MS, not even that it waits. */
  private String waiting(String why) {
    return why + (observed.isInfant() ? ": every verdict waits." : ": MS criteria wait.");
  }

  private void addOfSample() {
    boolean isShared = isPattern(BandPattern.LOCAL_AND_SYSTEMIC) || isPattern(BandPattern.SYSTEMIC);
    add(
        Infusion.of(observed).isYes(),
        "immunoglobulin-given",
        isShared ? Effect.INPUT_UNKNOWN : Effect.SENTENCE,
        Infusion.stated(observed).isYes()
            ? "Immunoglobulin infusion: shared bands and antibodies may come from the product."
            : "Immunoglobulin infusion not asked, and the serum looks like one: shared bands and"
                + " antibodies may come from a product.");
    add(
        Infusion.exchange(observed).isYes(),
        "plasma-exchanged",
        Effect.SENTENCE,
        "Plasma exchange lowers serum IgG: index and fraction read too high.");
    add(
        isBloody(),
        "blood-in-sample",
        Effect.SENTENCE,
        "Blood in the sample: shared bands may be blood.");
    add(
        isNotLumbar(observed),
        "not-lumbar",
        Effect.INPUT_UNKNOWN,
        "Not lumbar fluid: limits do not apply; puncture decides.");
    add(
        isMonoclonal(observed),
        "monoclonal",
        Effect.INPUT_UNKNOWN,
        "Monoclonal pattern: serum immunofixation; κ index may mislead.");
  }

  private void addOfPerson() {
    boolean isAdem = observed.bedside().attack().syndromes().contains(Syndrome.ADEM);
    add(
        CHILD.answer(observed).isYes(),
        "young-child",
        isAdem ? Effect.CONTRADICTION : Effect.SENTENCE,
        observed.isInfant()
            ? "The limits of the first 90 days were used."
            : "Under 12: MOG-IgG first; a first ADEM does not count.");
    add(
        OLDER.answer(observed).isYes() || observed.setting().course().otherIllness().isYes(),
        "fifty-or-vascular",
        Effect.SENTENCE,
        "Age or vascular risk: the 2024 panel asks for stronger support (cord lesion, positive CSF or central vein sign).");
    add(
        observed.setting().course().isProgression(),
        "progressive-2024",
        Effect.EDITION_UNRESOLVED,
        "Progressive onset: 2024 rule not available to us in full.");
    pairDefect().ifPresent(stops::add);
    String drugs = String.join(", ", Treated.hiding(observed));
    add(
        !drugs.isEmpty(),
        "treated-before-sampling",
        Effect.SENTENCE,
        "Treated before this fluid was drawn (%s): read a negative result with the drug."
            .formatted(drugs));
  }

  private boolean isPattern(BandPattern pattern) {
    return observed.bands().pattern().filter(p -> p == pattern).isPresent();
  }

  /** Bands that were read without a serum beside them. */
  static boolean isWithoutSerum(Observed observed) {
    boolean isSerumThere =
        !observed.results().serum().equals(Draw.UNKNOWN)
            || observed.results().results().keySet().stream()
                .anyMatch(s -> s.in() == Compartment.SERUM);
    return !isSerumThere && isReadAlone(observed.bands());
  }

  private static boolean isReadAlone(BandReading bands) {
    return switch (bands.report()) {
      case BandReport.Concluded concluded -> concluded.isPositive();
      case BandReport.Counted counted ->
          counted.counts().csfOnly().isPresent()
              && counted.counts().shared().isEmpty()
              && counted.counts().serumOnly().isEmpty();
      case BandReport.NotReported none -> false;
      case BandReport.GelNamed named -> false;
      case BandReport.Patterned patterned -> false;
      case BandReport.ReadFromGel gel -> false;
    };
  }

  private boolean isBloody() {
    boolean isShared = observed.isBloody() && isPattern(BandPattern.SYSTEMIC);
    return isShared || BloodLimit.of(observed.facts()).doubt(observed.panel()).isPresent();
  }

  static boolean isNotLumbar(Observed observed) {
    return observed.results().csf().site().filter(site -> !site.equals("lumbar")).isPresent();
  }

  static boolean isMonoclonal(Observed observed) {
    return observed.bands().pattern().filter(p -> p == BandPattern.LADDER).isPresent()
        || observed.results().answer(Circumstance.MONOCLONAL_GAMMOPATHY).isYes();
  }

  private Optional<Stop> pairDefect() {
    List<String> defects = new ArrayList<>();
    if (observed.panel().pairing().isInvalid()) {
      defects.add("serum and CSF were drawn too far apart");
    }
    boolean isUnconfirmed =
        observed.bands().isReported()
            && !observed.bands().isConfirmed()
            && observed.bands().verdict() != BandVerdict.UNDETERMINED;
    if (isUnconfirmed) {
      defects.add("nobody has confirmed the gel");
    }
    Set<String> doubted =
        observed.panel().suspected().stream()
            .filter(observed.results()::has)
            .map(Sample::term)
            .collect(Collectors.toSet());
    if (!doubted.isEmpty()) {
      defects.add("doubted: " + doubted.stream().sorted().collect(Collectors.joining(", ")));
    }
    if (defects.isEmpty()) {
      return Optional.empty();
    }
    boolean isInput = defects.size() > (doubted.isEmpty() ? 0 : 1) || isKappaWithheld();
    return Optional.of(
        stop(
            observed,
            "pair-defect",
            isInput ? Effect.INPUT_UNKNOWN : Effect.SENTENCE,
            "A defect of the sample first: %s.".formatted(String.join("; ", defects))));
  }

  private boolean isKappaWithheld() {
    return observed.findings().get(FindingCode.KAPPA_INDEX).hasValue()
        && !observed.verdict(FindingCode.KAPPA_INDEX).isDecided();
  }
}
