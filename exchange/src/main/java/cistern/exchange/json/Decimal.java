package cistern.exchange.json;

import java.math.BigDecimal;
import java.util.Optional;

/** Literals to exact numbers. */
final class Decimal {

  private Decimal() {}

  /** The number of a literal; empty, with a problem noted, when it cannot be computed with. */
  static Optional<BigDecimal> read(
      Json.Numeral numeral,
      NumberRange sign,
      InputLimits limits,
      Place place,
      InputProblems problems) {
    String literal = numeral.literal();
    if (literal.length() > limits.numberLength()) {
      problems.add(place, InputTrouble.TOO_LONG, limits.numberLength());
      return Optional.empty();
    }
    Optional<InputTrouble> trouble = sizeTrouble(literal);
    BigDecimal number = trouble.isPresent() ? BigDecimal.ZERO : exact(literal);
    Optional<InputTrouble> any = trouble.or(() -> sign.trouble(number));
    any.ifPresent(t -> problems.add(place, t));
    return any.isPresent() ? Optional.empty() : Optional.of(number);
  }

  private static Optional<InputTrouble> sizeTrouble(String literal) {
    double rounded = Double.parseDouble(literal);
    if (Double.isInfinite(rounded)) {
      return Optional.of(InputTrouble.NOT_FINITE);
    }
    return rounded == 0 && !isZero(literal)
        ? Optional.of(InputTrouble.TOO_SMALL)
        : Optional.empty();
  }

  /** Whether all digits before the exponent are zero. */
  private static boolean isZero(String literal) {
    for (int i = 0; i < literal.length(); i++) {
      char sign = literal.charAt(i);
      if (sign >= '1' && sign <= '9') {
        return false;
      }
      if (sign == 'e' || sign == 'E') {
        return true;
      }
    }
    return true;
  }

  /** The number as written; zero without its exponent, which may have any size. */
  private static BigDecimal exact(String literal) {
    return isZero(literal) ? BigDecimal.ZERO : new BigDecimal(literal);
  }

  /** The whole number that a decimal is, if it is one and not too large. */
  static Optional<Integer> whole(BigDecimal decimal) {
    try {
      return Optional.of(decimal.intValueExact());
    } catch (ArithmeticException notWhole) {
      return Optional.empty();
    }
  }
}
