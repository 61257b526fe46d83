package cistern.exchange.lab;

import java.util.Optional;
import java.util.regex.Pattern;

/** What parts the whole from the fraction in the numbers of a report. */
public enum DecimalMark {
  POINT,
  COMMA,
  /** Nobody has said; only numbers that can be read in one way are read. */
  UNTOLD;

  private static final Pattern ONLY_COMMA_DECIMAL =
      Pattern.compile("0+,\\d+|\\d+,(\\d{1,2}|\\d{4,})|\\d{4,},\\d+|\\d{1,3}(\\.\\d{3})+,\\d+");
  private static final Pattern POINTED_THOUSANDS = Pattern.compile("\\d{1,3}(\\.\\d{3})+");
  private static final Pattern COMMA_THOUSANDS = Pattern.compile("\\d{1,3}(,\\d{3})+(\\.\\d+)?");
  private static final Pattern ONLY_COMMA_THOUSANDS =
      Pattern.compile("[1-9]\\d{0,2}((,\\d{3}){2,}(\\.\\d+)?|,\\d{3}\\.\\d+)");

  /** Whether a number can only be read with a decimal comma. */
  public static boolean isOnlyComma(String number) {
    return number.contains(",") && ONLY_COMMA_DECIMAL.matcher(number).matches();
  }

  /** The number with a decimal point and nothing between its thousands; empty when unclear. */
  Optional<String> plain(String number) {
    return switch (this) {
      case POINT -> pointed(number, COMMA_THOUSANDS);
      case COMMA -> commaed(number);
      case UNTOLD -> isOnlyComma(number) ? commaed(number) : pointed(number, ONLY_COMMA_THOUSANDS);
    };
  }

  private static Optional<String> pointed(String number, Pattern thousands) {
    if (!number.contains(",")) {
      return Optional.of(number);
    }
    return thousands.matcher(number).matches()
        ? Optional.of(number.replace(",", ""))
        : Optional.empty();
  }

  private static Optional<String> commaed(String number) {
    if (!number.contains(",")) {
      return number.contains(".") && !POINTED_THOUSANDS.matcher(number).matches()
          ? Optional.empty()
          : Optional.of(number.replace(".", ""));
    }
    String whole = number.substring(0, number.indexOf(','));
    boolean isGrouped = !whole.contains(".") || POINTED_THOUSANDS.matcher(whole).matches();
    boolean isOne = number.indexOf(',') == number.lastIndexOf(',');
    return isOne && isGrouped
        ? Optional.of(whole.replace(".", "") + "." + number.substring(number.indexOf(',') + 1))
        : Optional.empty();
  }
}
