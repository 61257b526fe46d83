package cistern.exchange.lab;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A value as it is written: a number, a limit or a titre, digit by digit.
 *
 * @param kind which of them
 * @param literal the number as JSON writes it, with every digit that was sent
 * @param rest what follows the number, such as a unit; may be empty
 */
public record NumberText(Kind kind, String literal, String rest) {

  private static final int LONGEST = 400;
  private static final Pattern WRITTEN =
      Pattern.compile(
          "(?<sign><=|>=|=<|=>|<|>|≤|≥|=|less than|more than|below|above|unter|über|kleiner|"
              + "größer|kleiner als|größer als|inférieur à|supérieur à)?\\s*"
              + "(?<number>[-+]?(\\d[\\d.,]*|\\.\\d+)([eE][-+]?\\d{1,4})?)(?<rest>.*)",
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

  /** A number that can be read in one way only, unless its point parts thousands. */
  private static final Pattern PLAIN = Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?");

  private static final Pattern TITRE = Pattern.compile("1\\s*[:/]\\s*(\\d{1,9})");
  private static final Pattern JSON = Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][-+]?\\d+)?");
  private static final Pattern ZEROS = Pattern.compile("^0+(?=\\d)");
  private static final Pattern FLAG =
      Pattern.compile("(?i)[\\s(]*(h|hh|l|ll|\\*+|\\++|↑+|↓+|!|high|low|hoch|niedrig)[\\s)]*");

  /**
   * Another number behind the first, which makes it a range or a date; not a unit in powers of ten.
   */
  private static final Pattern SECOND_NUMBER =
      Pattern.compile("(?!10[*^]\\d{1,2}\\s*/)[-–~;|:\\d.,].*|[/+&]\\s*\\d.*");

  /** Kinds of value. */
  public enum Kind {
    VALUE("value"),
    BELOW("below"),
    ABOVE("above"),
    /** The last dilution that was positive; only a specific antibody has one. */
    TITRE("value");

    private final String field;

    Kind(String field) {
      this.field = field;
    }

    /** The field of a work-up's result. */
    public String field() {
      return field;
    }
  }

  /** Why a text is no value. */
  enum Trouble {
    NO_NUMBER,
    COMMA_UNCLEAR
  }

  /** Whether a text begins with digits that only a decimal comma explains. */
  public static boolean hasDecimalComma(String text) {
    Matcher written = WRITTEN.matcher(text.strip());
    return text.contains(",")
        && written.matches()
        && DecimalMark.isOnlyComma(written.group("number"));
  }

  /** Whether a text is a number, a limit or a titre, however its comma is meant. */
  public static boolean isNumber(String text) {
    return parse(text, DecimalMark.COMMA).filter(n -> n.rest.isEmpty()).isPresent()
        || parse(text, DecimalMark.POINT).filter(n -> n.rest.isEmpty()).isPresent();
  }

  /** The value of a text; empty when it is none or its comma is unclear. */
  public static Optional<NumberText> parse(String text, DecimalMark mark) {
    String stripped = text.replace('\u00a0', ' ').replace('\u202f', ' ').strip();
    if (stripped.length() > LONGEST) {
      return Optional.empty();
    }
    if (mark != DecimalMark.COMMA && PLAIN.matcher(stripped).matches()) {
      return Optional.of(new NumberText(Kind.VALUE, stripped, ""));
    }
    Matcher titre = TITRE.matcher(stripped);
    if (titre.matches()) {
      return Optional.of(new NumberText(Kind.TITRE, withoutZeros(titre.group(1)), ""));
    }
    Matcher written = WRITTEN.matcher(stripped);
    if (!written.matches()) {
      return Optional.empty();
    }
    Kind kind = kind(written.group("sign"));
    String rest = FLAG.matcher(written.group("rest")).matches() ? "" : written.group("rest");
    boolean isApart = rest.isEmpty() || !SECOND_NUMBER.matcher(rest.strip()).matches();
    return isApart
        ? literal(written.group("number"), mark).map(n -> new NumberText(kind, n, rest.strip()))
        : Optional.empty();
  }

  /** What is wrong with a text that is no value. */
  static Trouble trouble(String text) {
    Matcher written = WRITTEN.matcher(text.strip());
    return written.matches()
            && written.group("number").contains(",")
            && literal(written.group("number"), DecimalMark.UNTOLD).isEmpty()
        ? Trouble.COMMA_UNCLEAR
        : Trouble.NO_NUMBER;
  }

  private static Kind kind(@org.jspecify.annotations.Nullable String sign) {
    return switch (sign == null ? "" : sign.toLowerCase(java.util.Locale.ROOT)) {
      case "", "=" -> Kind.VALUE;
      case "<",
          "<=",
          "=<",
          "≤",
          "less than",
          "below",
          "unter",
          "kleiner",
          "kleiner als",
          "inférieur à" ->
          Kind.BELOW;
      default -> Kind.ABOVE;
    };
  }

  private static Optional<String> literal(String number, DecimalMark mark) {
    String bare = number.startsWith("+") ? number.substring(1) : number;
    String minus = bare.startsWith("-") ? "-" : "";
    String digits = bare.substring(minus.length());
    int exponentAt = digits.replace('E', 'e').indexOf('e');
    String mantissa = exponentAt < 0 ? digits : digits.substring(0, exponentAt);
    String exponent = exponentAt < 0 ? "" : digits.substring(exponentAt);
    return mark.plain(mantissa)
        .map(plain -> minus + withoutZeros(plain) + exponent)
        .filter(text -> JSON.matcher(text).matches());
  }

  private static String withoutZeros(String number) {
    String shorter = ZEROS.matcher(number).replaceFirst("");
    return shorter.startsWith(".") ? "0" + shorter : shorter;
  }
}
