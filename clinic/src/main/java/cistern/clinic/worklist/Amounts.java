package cistern.clinic.worklist;

import cistern.measurement.ReportedValue;
import java.math.BigDecimal;
import java.math.MathContext;

/** Values as a preview shows them. */
final class Amounts {

  private static final MathContext SIX = new MathContext(6);

  private Amounts() {}

  static String of(ReportedValue value) {
    return switch (value) {
      case ReportedValue.Exact exact -> number(exact.interval().lower());
      case ReportedValue.Below below -> "<" + number(below.interval().upper());
      case ReportedValue.Above above -> ">" + number(above.interval().lower());
    };
  }

  private static String number(double value) {
    return new BigDecimal(value).round(SIX).stripTrailingZeros().toPlainString();
  }
}
