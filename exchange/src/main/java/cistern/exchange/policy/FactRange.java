package cistern.exchange.policy;

import cistern.exchange.json.Sign;
import cistern.fact.Fact;
import cistern.fact.FactValue;

/** Which numbers make sense for a fact. */
enum FactRange {
  /**
   * Not a policy's to change: a text that describes how a result is computed, or a limit of the
   * input, which holds before any policy is read.
   */
  FIXED,
  /** A whole number, one or more. */
  COUNT,
  /** More than zero. */
  POSITIVE,
  /** Zero or more. */
  NOT_NEGATIVE,
  /** Any number. */
  ANY;

  static FactRange of(Fact fact) {
    String key = fact.key();
    boolean isFixedText = fact.value() instanceof FactValue.Word && Choices.of(key).isEmpty();
    if (isFixedText || key.startsWith("input.")) {
      return FIXED;
    }
    if (key.equals("bands.cut-off")) {
      return COUNT;
    }
    if (key.startsWith("molar-mass.") || key.endsWith(".years")) {
      return POSITIVE;
    }
    return key.startsWith("igg-synthesis-rate.") ? ANY : NOT_NEGATIVE;
  }

  Sign sign() {
    return switch (this) {
      case COUNT, POSITIVE -> Sign.POSITIVE;
      case NOT_NEGATIVE -> Sign.NOT_NEGATIVE;
      case ANY, FIXED -> Sign.ANY;
    };
  }
}
