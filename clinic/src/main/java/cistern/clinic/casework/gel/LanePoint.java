package cistern.clinic.casework.gel;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.OptionalDouble;

/** Places in a lane, in pixels from the top of the picture, as people type and read them. */
final class LanePoint {

  private LanePoint() {}

  /** A place that is typed, with a point or a comma; nothing when it is no number. */
  static OptionalDouble parse(String typed) {
    return typed.matches("\\d{1,6}([.,]\\d{1,2})?")
        ? OptionalDouble.of(Double.parseDouble(typed.replace(',', '.')))
        : OptionalDouble.empty();
  }

  /** A place as a form and a file hold it: two decimals at most. */
  static String number(double y) {
    BigDecimal number = BigDecimal.valueOf(y).setScale(2, RoundingMode.HALF_EVEN);
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  /** A place as it is read. */
  static String words(double y) {
    return String.format(Locale.ROOT, "%.0f pixels from the top", y);
  }
}
