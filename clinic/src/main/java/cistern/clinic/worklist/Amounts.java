package cistern.clinic.worklist;

import cistern.measurement.Interval;
import java.math.BigDecimal;
import java.math.MathContext;

/** Values as a preview shows them. */
final class Amounts {

  private static final MathContext SIX = new MathContext(6);

  private Amounts() {}

  static String of(Interval value) {
    if (value.isExact()) {
      return number(value.lower());
    }
    return Double.isInfinite(value.upper())
        ? ">" + number(value.lower())
        : "<" + number(value.upper());
  }

  private static String number(double value) {
    return new BigDecimal(value).round(SIX).stripTrailingZeros().toPlainString();
  }
}
