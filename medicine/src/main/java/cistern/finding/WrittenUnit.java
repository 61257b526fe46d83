package cistern.finding;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A unit in which papers write what the medicine holds in its own. A number is written with the
 * digits that it has, never with more than a measurement carries, and with more only where it would
 * else look as if it lay on the other side of its limit.
 *
 * @param text as papers print it
 * @param size how much of the medicine's unit one of it is
 * @param isOfCells whether cells are counted in it: a count keeps all its digits
 */
public record WrittenUnit(String text, double size, boolean isOfCells) {

  /** A number whose last zeros a file may have dropped: 4 stands for 4.0 too. */
  private static final int FEWEST = 2;

  /** What a limit, and a number that was computed, is written with. */
  private static final int USUAL = 3;

  /** So many digits are still a measurement's own; more of them come from a conversion. */
  private static final int MOST = 4;

  private static final int ENOUGH_TO_TELL = 9;
  private static final int TENTHS = 1;
  private static final MathContext EXACT = new MathContext(24);
  private static final Pattern POWER = Pattern.compile("^10\\*(\\d+)");
  private static final String SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
  private static final Pattern CELLS = Pattern.compile("^\\{?cells}?(?=/)");

  /** How a unit that is given as UCUM, or as a laboratory spells it, stands on paper. */
  static String printed(String written) {
    String text = CELLS.matcher(written).replaceFirst("").replaceAll("[{}]", "");
    text = text.replaceAll("(^|/)u(?=[gmL])", "$1µ").replaceAll("(^|/)ul$", "$1µl");
    Matcher power = POWER.matcher(text.replace("m3", "m³"));
    return power.replaceFirst(m -> "× 10" + superscript(m.group(1)));
  }

  private static String superscript(String digits) {
    return digits
        .chars()
        .mapToObj(d -> String.valueOf(SUPERSCRIPTS.charAt(d - '0')))
        .reduce("", String::concat);
  }

  /**
   * A number in a unit that was chosen for it; as the medicine holds it where none was, or one of
   * the same size.
   */
  public static String number(
      Optional<WrittenUnit> unit, Function<WrittenUnit, String> chosen, Supplier<String> held) {
    return unit.filter(u -> !u.isOfSameSize()).map(chosen).orElseGet(held);
  }

  /** Whether numbers in it are those of the medicine's unit. */
  public boolean isOfSameSize() {
    return size == 1;
  }

  /** A measured or computed number. */
  public String number(double held) {
    return text(rounded(held, digits(held)));
  }

  /** A number beside another of the same row, no finer than that one is written. */
  public String like(double held, double value) {
    int written = rounded(value, digits(value)).stripTrailingZeros().precision();
    return text(rounded(held, Math.min(digits(value), Math.max(USUAL, written))));
  }

  /** A limit. */
  public String limit(double held) {
    return text(rounded(held, USUAL));
  }

  /** A limit beside a number that is judged by it. */
  public String limit(double limit, double held) {
    return text(cut(limit, held));
  }

  /** A number beside its limit: as both are written, it lies on the side on which it lies. */
  public String besideLimit(double held, double limit) {
    BigDecimal cut = cut(limit, held);
    int side = Double.compare(held, limit);
    int digits = digits(held);
    while (digits < ENOUGH_TO_TELL && rounded(held, digits).compareTo(cut) != side) {
      digits++;
    }
    return side == 0 ? text(cut) : text(rounded(held, digits));
  }

  /** A limit with so many digits that rounding it passes no number that it judges. */
  private BigDecimal cut(double limit, double held) {
    int side = Double.compare(limit, held);
    BigDecimal number = exactly(held);
    int digits = USUAL;
    while (digits < ENOUGH_TO_TELL
        && side != 0
        && rounded(limit, digits).compareTo(number) != side) {
      digits++;
    }
    return rounded(limit, digits);
  }

  /** The unit behind a number: {@code 12/µL}, {@code 12 × 10⁶/L}. */
  public String after(String number) {
    return text.startsWith("/") ? number + text : number + " " + text;
  }

  /** So many of some things: {@code 12 cells/µL}, {@code 12 × 10⁶/L cells}. */
  public String of(String number, String things) {
    return text.startsWith("/") ? number + " " + things + text : number + " " + text + " " + things;
  }

  private int digits(double held) {
    BigDecimal own = BigDecimal.valueOf(held).stripTrailingZeros();
    int shown = Math.max(own.precision(), own.precision() - own.scale());
    int most = own.precision() <= MOST ? MOST : USUAL;
    return Math.max(FEWEST, Math.min(shown, most));
  }

  private BigDecimal rounded(double held, int digits) {
    if (isOfCells) {
      BigDecimal tenths = BigDecimal.valueOf(held).setScale(TENTHS, RoundingMode.HALF_UP);
      return tenths.divide(BigDecimal.valueOf(size), EXACT);
    }
    BigDecimal number = exactly(held);
    int whole = number.signum() == 0 ? 1 : number.precision() - number.scale();
    return number.setScale(Math.max(0, digits - whole), RoundingMode.HALF_EVEN);
  }

  private BigDecimal exactly(double held) {
    return BigDecimal.valueOf(held).divide(BigDecimal.valueOf(size), EXACT);
  }

  private static String text(BigDecimal number) {
    return number.signum() == 0
        ? "0"
        : number.stripTrailingZeros().toPlainString().replace("-", "−");
  }
}
