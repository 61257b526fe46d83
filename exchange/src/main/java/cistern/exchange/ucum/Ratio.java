package cistern.exchange.ucum;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A positive factor, kept as two decimals so that it stays exact.
 *
 * @param numerator positive
 * @param denominator positive
 */
public record Ratio(BigDecimal numerator, BigDecimal denominator) {

  /** No change. */
  public static final Ratio ONE = new Ratio(BigDecimal.ONE, BigDecimal.ONE);

  /** Far more digits than a double, so that only the last rounding shows. */
  private static final MathContext DIGITS = new MathContext(60, RoundingMode.HALF_EVEN);

  /** Checks the signs. */
  public Ratio {
    if (numerator.signum() <= 0 || denominator.signum() <= 0) {
      throw new IllegalArgumentException("a factor between units is positive");
    }
  }

  /** A decimal factor. */
  static Ratio of(BigDecimal factor) {
    return new Ratio(factor, BigDecimal.ONE);
  }

  /** The factor of a text: a decimal, or two with a stroke between them. */
  static Ratio parse(String text) {
    String[] parts = text.split("/", -1);
    BigDecimal denominator = parts.length > 1 ? new BigDecimal(parts[1]) : BigDecimal.ONE;
    return new Ratio(new BigDecimal(parts[0]), denominator);
  }

  /** The product. */
  Ratio times(Ratio other) {
    return new Ratio(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
  }

  /** The quotient. */
  Ratio dividedBy(Ratio other) {
    return times(other.inverse());
  }

  private Ratio inverse() {
    return new Ratio(/* numerator= */ denominator, /* denominator= */ numerator);
  }

  /** A whole power, which may be negative. */
  Ratio power(int exponent) {
    Ratio base = exponent < 0 ? inverse() : this;
    int times = Math.abs(exponent);
    return new Ratio(base.numerator.pow(times), base.denominator.pow(times));
  }

  /** Whether both are the same factor, however written. */
  boolean isSame(Ratio other) {
    return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator))
        == 0;
  }

  /** The same factor as one decimal, where it is one. */
  Ratio reduced() {
    BigDecimal rounded = numerator.divide(denominator, DIGITS).stripTrailingZeros();
    return rounded.multiply(denominator).compareTo(numerator) == 0 ? of(rounded) : this;
  }

  /** A number in the other unit, rounded once; possibly infinite or zero where a double ends. */
  public double toDouble(BigDecimal number) {
    BigDecimal product = number.multiply(numerator);
    return (denominator.compareTo(BigDecimal.ONE) == 0
            ? product
            : product.divide(denominator, DIGITS))
        .doubleValue();
  }
}
