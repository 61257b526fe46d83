package cistern.urgent;

import java.util.List;
import java.util.function.BiFunction;

/**
 * One row of the catalogue of urgent patterns.
 *
 * @param code the name in files
 * @param isInfection whether it silences everything that supports MS from the second tier on
 * @param grades when it holds, gravest first; the first that holds counts
 */
record UrgentRule(String code, boolean isInfection, List<Grade> grades) {

  /** Copies the grades. */
  UrgentRule {
    grades = List.copyOf(grades);
  }

  static UrgentRule of(String code, Grade... grades) {
    return new UrgentRule(code, false, List.of(grades));
  }

  static UrgentRule infection(String code, Grade... grades) {
    return new UrgentRule(code, true, List.of(grades));
  }

  /**
   * When a rule holds, and what is said then.
   *
   * @param tier how soon
   * @param isNamedUnknown whether it is named while an input is missing
   * @param trigger when
   * @param say the sentence, from what was observed and the values in words
   * @param act who, and which test
   */
  record Grade(
      Tier tier,
      boolean isNamedUnknown,
      Trigger trigger,
      BiFunction<Observed, String, String> say,
      String act) {

    static Grade now(Trigger trigger, String say, String act) {
      return new Grade(Tier.T0, true, trigger, (o, values) -> say.replace("{values}", values), act);
    }

    static Grade of(Tier tier, Trigger trigger, String say, String act) {
      return new Grade(tier, false, trigger, (o, v) -> say.replace("{values}", v), act);
    }

    Grade saying(BiFunction<Observed, String, String> words) {
      return new Grade(tier, isNamedUnknown, trigger, words, act);
    }
  }
}
