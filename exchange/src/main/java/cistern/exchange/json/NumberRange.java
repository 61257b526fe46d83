package cistern.exchange.json;

import java.math.BigDecimal;
import java.util.Optional;

/** Which numbers a field may hold. */
public enum NumberRange {
  /** Any finite number. */
  ANY,
  /** Zero or more. */
  NOT_NEGATIVE,
  /** More than zero. */
  POSITIVE,
  /** From 0 to 1. */
  FRACTION;

  /** What is wrong with a number, if anything. */
  Optional<InputTrouble> trouble(BigDecimal number) {
    return switch (this) {
      case ANY -> Optional.empty();
      case NOT_NEGATIVE -> when(number.signum() < 0, InputTrouble.NEGATIVE);
      case POSITIVE -> when(number.signum() <= 0, InputTrouble.NOT_POSITIVE);
      case FRACTION ->
          when(
              number.signum() < 0 || number.compareTo(BigDecimal.ONE) > 0,
              InputTrouble.NOT_A_FRACTION);
    };
  }

  private static Optional<InputTrouble> when(boolean isWrong, InputTrouble trouble) {
    return isWrong ? Optional.of(trouble) : Optional.empty();
  }
}
