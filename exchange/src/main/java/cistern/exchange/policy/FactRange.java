package cistern.exchange.policy;

import cistern.exchange.json.Sign;
import cistern.fact.Fact;

/** Which numbers make sense for a fact. */
enum FactRange {
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
      case ANY -> Sign.ANY;
    };
  }
}
