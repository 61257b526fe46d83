package cistern.urgent;

import static cistern.urgent.Trigger.all;
import static cistern.urgent.Trigger.any;
import static cistern.urgent.Trigger.over;
import static cistern.urgent.Trigger.stated;
import static cistern.urgent.Trigger.under;
import static cistern.urgent.Trigger.where;

import cistern.bands.BandVerdict;
import cistern.bedside.MicrobeTest;
import cistern.bedside.Sign;
import cistern.bedside.Syndrome;
import cistern.bedside.Treatment;
import cistern.bedside.TreatmentKind;
import cistern.differential.Serology;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.Circumstance;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The triggers that several rules share: what is known in words, and cells by age. */
final class Cues {

  private static final List<String> MICROBE_METHODS =
      List.of(
          "gram",
          "culture",
          "pcr",
          "antigen",
          "acid",
          "stain",
          "ink",
          "microscop",
          "smear",
          "xpert",
          "metagenom",
          "tuberculosis-fungi",
          "crypto");
  private static final List<String> SIMPLEX = List.of("hsv", "simplex", "herpes");
  private static final List<String> ZOSTER = List.of("vzv", "zoster", "varicella");

  /** Several microbes in one test. */
  private static final List<String> PANEL = List.of("panel", "enceph", "mening");

  private static final List<String> TREPONEMAL =
      List.of("trepon", "tppa", "tpha", "fta", "syphilis");

  /** More cells than the age allows. */
  static final Trigger CELLS =
      where(
          Observed::isInfant,
          stated("more cells than the age allows", "leukocytes", Cues::infantCells),
          Trigger.from(Quantity.LEUKOCYTES, "leukocytes.upper"));

  static final Trigger AWAKE_NOT = under(Quantity.COMA_SCORE, "urgent.coma-score.under");
  static final Trigger FEVER = sign(Sign.FEVER);
  static final Trigger CONFUSION = sign(Sign.CONFUSION);
  static final Trigger SEIZURE = sign(Sign.NEW_SEIZURE);
  static final Trigger DROWSY = any(AWAKE_NOT, CONFUSION);
  static final Trigger IMMUNOCOMPROMISED = sign(Sign.IMMUNOCOMPROMISED);
  static final Trigger XANTHOCHROMIC =
      stated("xanthochromic fluid", "appearance", o -> looks(o, "xantho", "yellow"));
  static final Trigger CLEAR = stated("clear fluid", "appearance", Cues::clear);
  static final Trigger SITTING = stated("sitting", "position", Cues::sitting);
  static final Trigger FEW_PUNCTURE_CELLS = under(Quantity.LEUKOCYTES, "leukocytes.upper");
  static final Trigger LACTATE_ABOVE =
      stated("raised lactate", "lactate", o -> is(o, FindingCode.LACTATE, Verdict.ABOVE));
  static final Trigger GLUCOSE_RATIO_LOW =
      stated(
          "low glucose ratio",
          "glucose-ratio",
          o -> is(o, FindingCode.GLUCOSE_RATIO, Verdict.BELOW));
  static final Trigger LOCAL_BANDS =
      stated("CSF-only bands", "bands", o -> bands(o, BandVerdict.POSITIVE));
  static final Trigger NO_BANDS =
      stated("no CSF-only bands", "bands", o -> bands(o, BandVerdict.NEGATIVE));
  static final Trigger MICROBE =
      where(
          Cues::isMicrobePending,
          stated("a result of microbiology that is pending", "microbiology", Cues::microbe),
          stated("Gram stain, culture, PCR or antigen", "microbiology", Cues::microbe));
  static final Trigger HERPES_PCR_OPEN = stated("herpes PCR", "microbiology", Cues::herpesOpen);
  static final Trigger CRYPTOCOCCUS =
      stated("cryptococcal antigen", "microbiology", Cues::cryptococcus);
  static final Trigger DEPLETED = stated("a depleting drug", "treatments", Cues::depleted);
  static final Trigger NEW_DEFICIT = stated("a new deficit", "evidence", Cues::deficit);
  static final Trigger VDRL = stated("CSF VDRL reactive", "microbiology", Cues::vdrl);
  static final Trigger TREPONEMA =
      stated("serum treponemal test positive", "serology", Cues::treponema);
  static final Trigger FOR_INFECTION =
      stated("", "question", o -> o.setting().isForInfection() ? Answer.YES : Answer.NO);
  static final Trigger SIXTH_NERVE = stated("sixth nerve palsy", "syndromes", Cues::sixthNerve);
  static final Trigger OLDER = Trigger.from(Quantity.AGE_YEARS, "urgent.age-years.from");
  static final Trigger STEROIDS_PLANNED =
      stated("steroids planned", "treatments", Cues::steroidsPlanned);

  private Cues() {}

  static Trigger sign(Sign sign) {
    return stated(sign.term(), sign.code(), o -> o.bedside().answer(sign));
  }

  static Trigger circumstance(Circumstance circumstance, String term) {
    return stated(term, circumstance.code(), o -> o.results().answer(circumstance));
  }

  static Trigger above(FindingCode code) {
    return stated(code.term() + " raised", code.code(), o -> is(o, code, Verdict.ABOVE));
  }

  private static Answer is(Observed observed, FindingCode code, Verdict verdict) {
    Verdict here = observed.verdict(code);
    if (!here.isDecided()) {
      return Answer.UNKNOWN;
    }
    return here == verdict ? Answer.YES : Answer.NO;
  }

  static Answer of(boolean isYes) {
    return isYes ? Answer.YES : Answer.NO;
  }

  private static Answer infantCells(Observed observed) {
    return observed
        .infancy()
        .map(part -> over(Quantity.LEUKOCYTES, part.key("leukocytes.upper")).answer(observed))
        .orElse(Answer.UNKNOWN);
  }

  private static Answer looks(Observed observed, String... words) {
    Optional<String> appearance = observed.results().csf().appearance();
    return appearance
        .map(a -> a.toLowerCase(Locale.ROOT))
        .map(a -> of(Stream.of(words).anyMatch(a::contains)))
        .orElse(Answer.UNKNOWN);
  }

  private static Answer clear(Observed observed) {
    Answer isClear = looks(observed, "clear", "colourless", "colorless", "crystal");
    boolean isOther = looks(observed, "unclear", "not clear", "turbid", "cloudy").isYes();
    return isOther ? Answer.NO : isClear;
  }

  private static Answer sitting(Observed observed) {
    return observed
        .results()
        .csf()
        .looked()
        .position()
        .map(p -> of(p.equals("sitting")))
        .orElse(Answer.UNKNOWN);
  }

  private static Answer bands(Observed observed, BandVerdict verdict) {
    BandVerdict here = observed.usableBands();
    return here == BandVerdict.UNDETERMINED ? Answer.UNKNOWN : of(here == verdict);
  }

  /** Tests of the fluid that find a microbe. */
  static Stream<MicrobeTest> microbeTests(Observed observed) {
    return observed.bedside().microbes().stream()
        .filter(t -> t.in() == Compartment.CSF)
        .filter(t -> MICROBE_METHODS.stream().anyMatch(t::isMethod));
  }

  private static boolean isMicrobePending(Observed observed) {
    return microbeTests(observed).anyMatch(t -> t.result() == MicrobeTest.Result.PENDING);
  }

  private static Answer microbe(Observed observed) {
    List<MicrobeTest> tests = microbeTests(observed).toList();
    if (tests.stream().anyMatch(MicrobeTest::isPositive)) {
      return Answer.YES;
    }
    boolean isOpen =
        tests.isEmpty() || tests.stream().anyMatch(t -> t.result() == MicrobeTest.Result.PENDING);
    return isOpen ? Answer.UNKNOWN : Answer.NO;
  }

  /** Whether a test looks for a herpes virus, by name, in a panel, or for what nobody said. */
  static boolean isForHerpes(MicrobeTest test) {
    return isForSimplex(test) || isForZoster(test);
  }

  /** Herpes zoster is the other virus. */
  static boolean isForSimplex(MicrobeTest test) {
    return isForSeveral(test) || (SIMPLEX.stream().anyMatch(test::isFor) && !test.isFor("zoster"));
  }

  static boolean isForZoster(MicrobeTest test) {
    return isForSeveral(test) || ZOSTER.stream().anyMatch(test::isFor);
  }

  private static boolean isForSeveral(MicrobeTest test) {
    return test.target().isEmpty() || PANEL.stream().anyMatch(test::isFor);
  }

  /** Where an infection is asked about, or a fever was found. */
  static boolean isInfectionThoughtOf(Observed observed) {
    return observed.setting().isForInfection() || FEVER.answer(observed).isYes();
  }

  /** Not done, or not back. */
  private static Answer herpesOpen(Observed observed) {
    return of(
        microbeTests(observed)
            .filter(t -> t.isMethod("pcr"))
            .filter(Cues::isForHerpes)
            .noneMatch(t -> t.result() != MicrobeTest.Result.PENDING));
  }

  private static Answer cryptococcus(Observed observed) {
    List<MicrobeTest> tests =
        observed.bedside().microbes().stream()
            .filter(t -> t.isFor("crypto") || t.isMethod("crypto"))
            .toList();
    if (tests.stream().anyMatch(MicrobeTest::isPositive)
        || hasPositive(observed, Compartment.SERUM, List.of("crypto"))) {
      return Answer.YES;
    }
    boolean isOpen = tests.stream().allMatch(t -> t.result() == MicrobeTest.Result.PENDING);
    return isOpen ? Answer.UNKNOWN : Answer.NO;
  }

  private static boolean hasPositive(Observed observed, Compartment in, List<String> names) {
    boolean isSerology =
        observed.serology().stream()
            .filter(s -> s.in() == in && s.result() == Serology.Result.POSITIVE)
            .map(s -> s.test().toLowerCase(Locale.ROOT))
            .anyMatch(t -> names.stream().anyMatch(t::contains));
    return isSerology
        || observed.bedside().microbes().stream()
            .filter(t -> t.in() == in && t.isPositive())
            .anyMatch(t -> names.stream().anyMatch(n -> t.isMethod(n) || t.isFor(n)));
  }

  private static boolean hasNamed(Observed observed, Compartment in, List<String> names) {
    boolean isSerology =
        observed.serology().stream()
            .filter(s -> s.in() == in && s.result() != Serology.Result.UNKNOWN)
            .map(s -> s.test().toLowerCase(Locale.ROOT))
            .anyMatch(t -> names.stream().anyMatch(t::contains));
    return isSerology
        || observed.bedside().microbes().stream()
            .filter(t -> t.in() == in && t.result() != MicrobeTest.Result.PENDING)
            .anyMatch(t -> names.stream().anyMatch(n -> t.isMethod(n) || t.isFor(n)));
  }

  private static Answer vdrl(Observed observed) {
    List<String> names = List.of("vdrl");
    if (hasPositive(observed, Compartment.CSF, names)) {
      return Answer.YES;
    }
    return hasNamed(observed, Compartment.CSF, names) ? Answer.NO : Answer.UNKNOWN;
  }

  /** After an infusion of immunoglobulin an antibody of the donors proves nothing. */
  private static Answer treponema(Observed observed) {
    if (hasPositive(observed, Compartment.SERUM, TREPONEMAL)) {
      return Infusion.of(observed).isYes() ? Answer.UNKNOWN : Answer.YES;
    }
    return hasNamed(observed, Compartment.SERUM, TREPONEMAL) ? Answer.NO : Answer.UNKNOWN;
  }

  private static Answer depleted(Observed observed) {
    boolean isTreated =
        observed.bedside().treatments().stream()
            .filter(t -> t.isBefore(observed.results().csf().at()))
            .map(Treatment::drug)
            .map(TreatmentKind::of)
            .flatMap(Optional::stream)
            .anyMatch(TreatmentKind::isDepleting);
    return isTreated ? Answer.YES : observed.results().answer(Circumstance.B_CELL_DEPLETION);
  }

  /** A typical attack is a new deficit, and so is any named syndrome or focal sign. */
  private static Answer deficit(Observed observed) {
    boolean isNew =
        observed.setting().focalSigns().isYes()
            || observed.setting().isAttack()
            || !observed.bedside().attack().syndromes().isEmpty()
            || observed.bedside().answer(Sign.CONFUSION).isYes()
            || observed.bedside().answer(Sign.VISUAL_LOSS).isYes()
            || observed.bedside().answer(Sign.LEG_OR_BLADDER_SIGNS).isYes();
    return isNew ? Answer.YES : observed.setting().focalSigns();
  }

  private static Answer sixthNerve(Observed observed) {
    List<Syndrome> syndromes = observed.bedside().attack().syndromes();
    return syndromes.isEmpty()
        ? Answer.UNKNOWN
        : of(syndromes.contains(Syndrome.SIXTH_NERVE_PALSY));
  }

  private static Answer steroidsPlanned(Observed observed) {
    return of(
        observed.bedside().treatments().stream()
            .filter(t -> t.is(TreatmentKind.STEROIDS))
            .anyMatch(t -> !t.isBefore(observed.results().csf().at())));
  }

  /** Seizure, coma, fever or confusion. */
  static final Trigger ACUTE_BRAIN = any(SEIZURE, AWAKE_NOT, FEVER, CONFUSION);

  static final Trigger BLOOD_IN_LAST_TUBE =
      Trigger.from(Quantity.LAST_ERYTHROCYTES, "urgent.bleeding.erythrocytes.from");

  static final Trigger CANCER_AGE = any(OLDER, sign(Sign.CANCER_HISTORY));

  static final Trigger THREE_CLASSES =
      all(
          above(FindingCode.IGG_FRACTION),
          above(FindingCode.IGA_FRACTION),
          above(FindingCode.IGM_FRACTION));
}
