package cistern.finding;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a document prints them: rounded the same way everywhere, never judged rounded. */
public final class Printed {

  private static final int MOST_DECIMALS = 6;

  private Printed() {}

  /** A value of a finding, without its unit; quotients are times 1000. */
  public static String of(FindingCode code, double value) {
    return switch (code.print()) {
      case QUOTIENT -> quotient(value);
      case FRACTION -> decimals(value * 100, 0) + " %";
      case INDEX -> decimals(value, 2);
      case RATE -> decimals(value, 1);
      case CONCENTRATION -> significant(value);
      case COUNT -> count(value);
    };
  }

  /** A value or a bound of a finding in the unit in which it is written, without that unit. */
  public static String of(Finding finding, double value) {
    return WrittenUnit.number(
        finding.unit(), u -> u.number(value), () -> of(finding.code(), value));
  }

  /** A limit of a finding in the unit in which it is written, without that unit. */
  public static String limit(Finding finding, double limit) {
    return WrittenUnit.number(
        finding.unit(),
        u -> u.limit(limit, finding.number().orElse(limit)),
        () -> of(finding.code(), limit));
  }

  /** An end of a finding's interval, as exact as its value. */
  public static String end(Finding finding, double end) {
    double value = finding.number().orElse(end);
    return WrittenUnit.number(
        finding.unit(), u -> u.like(end, value), () -> of(finding.code(), end));
  }

  /** A value of a finding beside its limit, without the unit. */
  public static String besideLimit(Finding finding, double value, double limit) {
    return WrittenUnit.number(
        finding.unit(),
        u -> u.besideLimit(value, limit),
        () -> besideLimit(finding.code(), value, limit));
  }

  private static String count(double value) {
    String tenths = decimals(value, 1);
    return tenths.endsWith(".0") ? decimals(value, 0) : tenths;
  }

  /** A value beside its limit: with more digits when both would look alike though they differ. */
  public static String besideLimit(FindingCode code, double value, double limit) {
    String plain = of(code, value);
    if (value == limit || !plain.equals(of(code, limit))) {
      return plain;
    }
    double scale =
        switch (code.print()) {
          case QUOTIENT -> 1000;
          case FRACTION -> 100;
          case INDEX, RATE, CONCENTRATION, COUNT -> 1;
        };
    for (int places = 1; places <= MOST_DECIMALS; places++) {
      String precise = decimals(value * scale, places);
      if (!precise.equals(decimals(limit * scale, places))) {
        return code.print() == FindingCode.Print.FRACTION ? precise + " %" : precise;
      }
    }
    return plain;
  }

  /** A quotient times 1000: two decimals, three below one. */
  public static String quotient(double value) {
    double times1000 = value * 1000;
    return decimals(times1000, Math.abs(times1000) < 1 ? 3 : 2);
  }

  /** A concentration with three significant digits, whole from one hundred upwards. */
  public static String significant(double value) {
    if (value == 0) {
      return "0";
    }
    if (Double.isInfinite(value)) {
      return "∞";
    }
    BigDecimal rounded = BigDecimal.valueOf(value);
    rounded =
        Math.abs(value) >= 100
            ? rounded.setScale(0, RoundingMode.HALF_EVEN)
            : rounded.round(new MathContext(3, RoundingMode.HALF_EVEN));
    return rounded.stripTrailingZeros().toPlainString().replace("-", "−");
  }

  /** A number with a fixed count of decimals; zero has no sign. */
  public static String decimals(double value, int places) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "∞" : "−∞";
    }
    return BigDecimal.valueOf(value)
        .setScale(places, RoundingMode.HALF_UP)
        .toPlainString()
        .replace("-", "−");
  }
}
