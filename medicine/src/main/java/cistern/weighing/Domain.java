package cistern.weighing;

import cistern.analysis.Puncture;
import cistern.bands.BandPattern;
import cistern.criteria.Criteria;
import cistern.criteria.CriteriaVerdict;
import cistern.criteria.CsfPositivity;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.differential.CohortContext;
import cistern.differential.Observation;
import cistern.differential.Prior;
import cistern.differential.Probabilities;
import cistern.differential.Probability;
import cistern.differential.Serology;
import cistern.differential.Trait;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.panel.Pairing;
import cistern.redflag.RedFlag;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Whom the published cohorts speak of. Outside, there is no number, and one reason in words; what
 * was not measured or stated is named beside the number.
 */
final class Domain {

  private static final String KEY = "probability.domain.";
  private static final double ROUNDING = 1e-9;

  /** The red flags that no cohort of typical first attacks holds; the others don't end it. */
  private static final Set<String> ENDING =
      Set.of(
          "mog-antibody",
          "aqp4-antibody",
          "leukocytes-beyond-ms",
          "neutrophils-prominent",
          "eosinophils-prominent",
          "glucose-ratio-low",
          "lactate-high",
          "protein-high",
          "albumin-quotient-high",
          "borrelia-antibody-raised",
          "three-class-synthesis",
          "igm-dominant-synthesis",
          "monoclonal-ladder",
          "bands-alike",
          "xanthochromic-fluid");

  /** What would take the number away, each by the finding that shows it. */
  private static final Map<FindingCode, String> MEASURED =
      Map.of(
          FindingCode.LEUKOCYTES, "leukocytes",
          FindingCode.GLUCOSE_RATIO, "glucose ratio",
          FindingCode.LACTATE, "lactate",
          FindingCode.TOTAL_PROTEIN, "total protein",
          FindingCode.ALBUMIN_QUOTIENT, "albumin quotient",
          FindingCode.BORRELIA_ANTIBODY_INDEX, "Borrelia antibody index");

  private final Puncture puncture;
  private final ClinicalPicture clinical;
  private final CsfPositivity fluid;
  private final Criteria criteria;
  private final Probabilities probabilities;
  private final Facts facts;

  Domain(
      Puncture puncture,
      ClinicalPicture clinical,
      CsfPositivity fluid,
      Criteria criteria,
      Probabilities probabilities) {
    this.puncture = puncture;
    this.clinical = clinical;
    this.fluid = fluid;
    this.criteria = criteria;
    this.probabilities = probabilities;
    this.facts = probabilities.facts();
  }

  /** The number, or why there is none. */
  Probability probability(List<RedFlag> flags) {
    Optional<CohortContext> context = context();
    Optional<String> reason =
        Stream.<Supplier<Optional<String>>>of(
                this::outsidePicture,
                this::outsidePrior,
                this::outsideAntibodies,
                () -> outsideFluid(flags),
                this::outsideMarker,
                this::outsideCriteria)
            .map(Supplier::get)
            .flatMap(Optional::stream)
            .findFirst()
            .or(() -> context.isEmpty() ? Optional.of(noContext()) : Optional.empty());
    if (reason.isPresent()) {
      return Probability.none(
          Probability.Status.OUTSIDE_DOMAIN, context, clinical.prior(), reason.get());
    }
    return probabilities.given(
        context.orElseThrow(), clinical.prior().orElseThrow(), marker().orElseThrow(), unknown());
  }

  private Optional<String> outsidePicture() {
    Optional<String> presentation =
        switch (clinical.evidence().presentation()) {
          case ATTACK -> Optional.empty();
          case PROGRESSION -> Optional.of("no cohort followed people with progression from onset");
          case NONE ->
              Optional.of("for a radiologically isolated finding no cohort gives a number");
          case NON_SPECIFIC -> Optional.of("no cohort followed people with non-specific symptoms");
          case ATYPICAL -> Optional.of("no cohort followed people with an atypical presentation");
          case UNKNOWN -> Optional.of("the presentation is not stated");
        };
    OptionalDouble age = puncture.panel().panel().person().ageYears();
    return presentation
        .or(() -> when(age.isEmpty(), "the age is not stated"))
        .or(
            () ->
                when(
                    age.orElse(0) < facts.number(KEY + "age-years"),
                    "the cohorts followed adults only"))
        .or(
            () ->
                when(
                    clinical.evidence().answer(Item.NO_BETTER_EXPLANATION) == Answer.NO,
                    "a better explanation is named"));
  }

  private Optional<String> outsidePrior() {
    if (clinical.prior().isEmpty()) {
      return Optional.of("no probability before the puncture was stated");
    }
    Prior prior = clinical.prior().get();
    double low = facts.number(KEY + "prior.lower") - ROUNDING;
    double high = facts.number(KEY + "prior.upper") + ROUNDING;
    double width = facts.number(KEY + "prior.width") + ROUNDING;
    return when(
            prior.low() < low || prior.high() > high,
            "a stated probability under 5 or over 95 % lies beyond the cohorts")
        .or(
            () ->
                when(
                    prior.high() - prior.low() > width,
                    "the stated range is wider than 30 points: state a narrower one"))
        .or(
            () ->
                when(
                    !prior.usesMri().isKnown(),
                    "it is not stated whether the probability already uses the imaging"));
  }

  private Optional<String> outsideAntibodies() {
    return clinical.serology().stream()
        .filter(
            s -> s.result() == Serology.Result.POSITIVE || s.result() == Serology.Result.BORDERLINE)
        .filter(s -> isDefining(s.test()))
        .findFirst()
        .map(
            s ->
                "the test for %s is %s, which may define another disease"
                    .formatted(s.test(), s.result().word()));
  }

  private boolean isDefining(String test) {
    List<String> parts = List.of(test.toLowerCase(Locale.ROOT).split("[^a-z0-9]+"));
    return Stream.of(facts.word(KEY + "antibodies").split(" "))
        .anyMatch(name -> parts.stream().anyMatch(part -> isNamed(part, name)));
  }

  /** A short name stands alone; a longer one may carry an ending ({@code nmdar}). */
  private static boolean isNamed(String part, String name) {
    return name.length() < 4 ? part.equals(name) : part.startsWith(name);
  }

  private static Optional<String> outsideFluid(List<RedFlag> flags) {
    return flags.stream()
        .filter(f -> ENDING.contains(f.code()))
        .findFirst()
        .map(f -> "no cohort followed people with this finding. " + f.text());
  }

  private Optional<String> outsideMarker() {
    Pairing.Verdict pairing = puncture.panel().pairing().verdict();
    Optional<BandPattern> pattern = puncture.bands().pattern();
    return when(
            pairing == Pairing.Verdict.INVALID || pairing == Pairing.Verdict.DOUBTFUL,
            "CSF and serum were drawn too far apart")
        .or(
            () ->
                when(
                    pattern
                        .filter(p -> p == BandPattern.LADDER || p == BandPattern.SYSTEMIC)
                        .isPresent(),
                    "the bands are alike in CSF and serum, or a ladder hides them"))
        .or(
            () ->
                when(
                    marker().isEmpty(),
                    puncture.bands().isReported()
                        ? "the bands are not decided"
                        : "neither bands nor a decided κ index are there"));
  }

  /** Bands, or κ index where no bands were reported. */
  private Optional<Observation> marker() {
    if (fluid.bands().isKnown()) {
      return Optional.of(new Observation(Trait.BANDS, fluid.bands().isYes()));
    }
    Verdict kappa = puncture.findings().verdict(FindingCode.KAPPA_INDEX);
    return puncture.bands().isReported()
        ? Optional.empty()
        : switch (kappa) {
          case ABOVE -> Optional.of(new Observation(Trait.KAPPA_INDEX, true));
          case WITHIN, BELOW -> Optional.of(new Observation(Trait.KAPPA_INDEX, false));
          case BORDERLINE, UNDETERMINED -> Optional.empty();
        };
  }

  private Optional<String> outsideCriteria() {
    boolean isMet =
        criteria
            .verdicts(clinical.evidence(), fluid.with(Answer.UNKNOWN))
            .contains(CriteriaVerdict.MET);
    return when(isMet, "the criteria are met without the fluid, and speak for themselves");
  }

  private Optional<CohortContext> context() {
    if (clinical.evidence().presentation() != Presentation.ATTACK || clinical.prior().isEmpty()) {
      return Optional.empty();
    }
    return switch (clinical.prior().get().usesMri()) {
      case NO -> Optional.of(CohortContext.MRI_NOT_USED);
      case YES ->
          switch (disseminated()) {
            case YES -> Optional.of(CohortContext.MRI_USED_DIS);
            case NO -> Optional.of(CohortContext.MRI_USED_NO_DIS);
            case UNKNOWN -> Optional.empty();
          };
      case UNKNOWN -> Optional.empty();
    };
  }

  private static String noContext() {
    return "the stated probability uses the imaging, and whether that shows dissemination in space"
        + " is not known";
  }

  /** Dissemination in space as the cohorts knew it: the four regions of 2017. */
  private Answer disseminated() {
    double asked = facts.number("mcdonald-2017.dissemination-in-space.regions");
    List<Answer> regions =
        Stream.of(
                Item.PERIVENTRICULAR,
                Item.CORTICAL_JUXTACORTICAL,
                Item.INFRATENTORIAL,
                Item.SPINAL_CORD)
            .map(clinical.evidence()::answer)
            .toList();
    long yes = regions.stream().filter(Answer::isYes).count();
    long open = regions.stream().filter(a -> !a.isKnown()).count();
    if (yes >= asked) {
      return Answer.YES;
    }
    return yes + open < asked ? Answer.NO : Answer.UNKNOWN;
  }

  private List<String> unknown() {
    List<String> all = new ArrayList<>();
    if (puncture.panel().pairing().verdict() == Pairing.Verdict.UNKNOWN) {
      all.add("the time between the draws");
    }
    for (String test : List.of(Serology.MOG_IGG, Serology.AQP4_IGG)) {
      if (clinical.serology().stream().noneMatch(s -> s.test().equals(test))) {
        all.add(test.equals(Serology.MOG_IGG) ? "MOG antibodies" : "aquaporin-4 antibodies");
      }
    }
    if (clinical.evidence().answer(Item.NO_BETTER_EXPLANATION) == Answer.UNKNOWN) {
      all.add("a better explanation");
    }
    Stream.of(FindingCode.values())
        .filter(MEASURED::containsKey)
        .filter(code -> !puncture.findings().verdict(code).isDecided())
        .map(MEASURED::get)
        .forEach(all::add);
    return all;
  }

  private static Optional<String> when(boolean is, String reason) {
    return is ? Optional.of(reason) : Optional.empty();
  }
}
