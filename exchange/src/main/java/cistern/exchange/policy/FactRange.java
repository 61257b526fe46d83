package cistern.exchange.policy;

import cistern.exchange.json.NumberRange;
import cistern.fact.Fact;
import cistern.fact.FactValue;

/** Which numbers make sense for a fact. */
enum FactRange {
  /**
   * Not a policy's to change: a text that describes how a result is computed, or a limit of the
   * input, which holds before any policy is read, or what keeps persons apart from their data.
   */
  FIXED,
  /** A whole number, one or more. */
  COUNT,
  /** More than zero. */
  POSITIVE,
  /** Zero or more. */
  NOT_NEGATIVE,
  /** Between 0 and 1 and neither of them: a share whose odds are computed with. */
  SHARE,
  /** Any number. */
  ANY;

  static FactRange of(Fact fact) {
    String key = fact.key();
    boolean isFixedText =
        fact.value() instanceof FactValue.Word && !isUnset(fact) && !Choices.isOpen(key);
    if (isFixedText || key.startsWith("input.") || key.startsWith("deidentify.")) {
      return FIXED;
    }
    if (key.equals("bands.cut-off")) {
      return COUNT;
    }
    if (isShare(key)) {
      return SHARE;
    }
    if (key.startsWith("molar-mass.")
        || key.startsWith("tubes.production.")
        || key.endsWith(".log-odds-ratio.spread")
        || key.endsWith(".years")) {
      return POSITIVE;
    }
    return key.startsWith("igg-synthesis-rate.") || key.endsWith(".log-odds-ratio")
        ? ANY
        : NOT_NEGATIVE;
  }

  private static boolean isShare(String key) {
    return key.equals("probability.share.own")
        || key.startsWith("headache-risk.local.")
        || (key.startsWith("headache-risk.factor.") && key.endsWith(".share"));
  }

  /** A number that was not read, or that only a clinic can set: the fact says who to ask. */
  static boolean isUnset(Fact fact) {
    return fact.value().toText().equals("ask") && !fact.unit().isEmpty();
  }

  NumberRange sign() {
    return switch (this) {
      case COUNT, POSITIVE -> NumberRange.POSITIVE;
      case NOT_NEGATIVE, SHARE -> NumberRange.NOT_NEGATIVE;
      case ANY, FIXED -> NumberRange.ANY;
    };
  }
}
