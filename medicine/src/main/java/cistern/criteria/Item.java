package cistern.criteria;

import java.util.Arrays;
import java.util.Optional;

/** One thing that a row of the criteria reads, under the name that the work-up gives it. */
public enum Item {
  NO_BETTER_EXPLANATION("noBetterExplanation", "no better explanation", Burden.RECORD),
  PRESENTATION("presentation", "kind of presentation", Burden.RECORD),
  ATTACKS("attacks", "two or more attacks", Burden.RECORD),
  OBJECTIVE_LESIONS(
      "objectiveLesions", "two or more lesions with objective clinical evidence", Burden.RECORD),
  HISTORICAL_ATTACK(
      "historicalAttack", "clear-cut history of an earlier attack elsewhere", Burden.RECORD),
  PROGRESSION_TWELVE_MONTHS(
      "progressionTwelveMonths", "twelve months of progression", Burden.RECORD),
  PERIVENTRICULAR("periventricular", "periventricular lesion", Burden.NEW_TEST),
  CORTICAL_JUXTACORTICAL(
      "corticalJuxtacortical", "cortical or juxtacortical lesion", Burden.NEW_TEST),
  INFRATENTORIAL("infratentorial", "infratentorial lesion", Burden.NEW_TEST),
  SPINAL_CORD("spinalCord", "spinal cord lesion", Burden.NEW_TEST),
  OPTIC_NERVE("opticNerve", "optic nerve involvement", Burden.NEW_TEST),
  CORD_LESIONS_TWO_OR_MORE(
      "cordLesionsTwoOrMore", "two or more spinal cord lesions", Burden.NEW_TEST),
  NEW_OR_MIXED_LESIONS(
      "newOrMixedEnhancingLesions",
      "new lesion, or enhancing beside non-enhancing lesions",
      Burden.TIME),
  CENTRAL_VEIN_SIGN(
      "centralVeinSignSelectSix", "central vein sign in six lesions", Burden.SAME_IMAGES),
  PARAMAGNETIC_RIM("paramagneticRimLesion", "paramagnetic rim lesion", Burden.SAME_IMAGES),
  VASCULAR_RISK("vascularRisk", "vascular risk or disease", Burden.RECORD),
  HEADACHE_DISORDER("headacheDisorder", "headache disorder", Burden.RECORD),
  BANDS("bands", "CSF-only oligoclonal bands", Burden.PUNCTURE),
  CSF_POSITIVE("csfPositive", "oligoclonal bands or a raised κ index", Burden.PUNCTURE);

  private final String code;
  private final String term;
  private final Burden burden;

  Item(String code, String term, Burden burden) {
    this.code = code;
    this.term = term;
    this.burden = burden;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** What it costs to learn it. */
  public Burden burden() {
    return burden;
  }

  /** How it is known. */
  public Kind kind() {
    return switch (this) {
      case PRESENTATION -> Kind.PRESENTATION;
      case ATTACKS, OBJECTIVE_LESIONS -> Kind.COUNT;
      case BANDS, CSF_POSITIVE -> Kind.FLUID;
      case NO_BETTER_EXPLANATION,
          HISTORICAL_ATTACK,
          PROGRESSION_TWELVE_MONTHS,
          NEW_OR_MIXED_LESIONS,
          CENTRAL_VEIN_SIGN,
          PARAMAGNETIC_RIM,
          VASCULAR_RISK,
          HEADACHE_DISORDER ->
          Kind.ANSWER;
      case PERIVENTRICULAR,
          CORTICAL_JUXTACORTICAL,
          INFRATENTORIAL,
          SPINAL_CORD,
          OPTIC_NERVE,
          CORD_LESIONS_TWO_OR_MORE ->
          Kind.LESION;
    };
  }

  /** The item of a name in a file, if it is one. */
  public static Optional<Item> parse(String code) {
    return Arrays.stream(values()).filter(i -> i.code.equals(code)).findFirst();
  }

  /** The highest level: 1 (yes), or 2 (two or more) for a count. */
  int top() {
    return this == ATTACKS || this == OBJECTIVE_LESIONS ? Count.TWO_OR_MORE : 1;
  }

  /** How an item is known. */
  public enum Kind {
    /** Stated as the presentation. */
    PRESENTATION,
    /** Stated as a count. */
    COUNT,
    /** Stated as yes or no. */
    ANSWER,
    /** Stated as yes or no, of a place that is imaged or tested. */
    LESION,
    /** Follows from the fluid, never stated. */
    FLUID
  }
}
