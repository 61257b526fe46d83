package cistern.clinic.paste;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as it was pasted, with what stands behind it.
 *
 * @param sign {@code <} or {@code >} or nothing
 * @param number with a point for decimals
 * @param unit nothing when none stands there
 */
record PastedValue(String sign, String number, String unit) {

  /** Digits with what may stand between them. */
  private static final String DIGITS = "[0-9][0-9.,']*";

  private static final Pattern VALUE =
      Pattern.compile(
          "([<>]?)\\s*(" + DIGITS + ")[\\s;|]*([^\\s0-9;|<>(\\[][^\\s;|]*|10\\S*)?(.*)");
  private static final String RANGE =
      "(?:[<>≤≥]\\s*[0-9][0-9.,]*|[0-9][0-9.,]*\\s*(?:-|–|to|bis)\\s*[0-9][0-9.,]*)";
  private static final Pattern REFERENCE =
      Pattern.compile(
          "[(\\[]?\\s*(?:ref(?:erence)?\\.?|normal|norm)?\\s*:?\\s*"
              + RANGE
              + "\\s*(\\S*?)[)\\]]?");
  private static final Pattern PLAIN = Pattern.compile("(0|[1-9]\\d*)(\\.\\d+)?");

  /** A comma before one, two or more than three digits, or after a nought: never of thousands. */
  private static final Pattern DECIMAL_COMMA =
      Pattern.compile("0,\\d+|[1-9]\\d{3,},\\d+|[1-9]\\d*,(?:\\d{1,2}|\\d{4,})");

  private static final Pattern MAYBE_THOUSANDS = Pattern.compile("[1-9]\\d{0,2}\\.\\d{3}");

  /** Whether a text has a comma that can mark nothing but decimals. */
  static boolean isWithDecimalComma(String block) {
    Matcher digits = Pattern.compile("(?<![0-9.,'])[0-9][0-9.,']*").matcher(block);
    return digits.results().anyMatch(d -> DECIMAL_COMMA.matcher(d.group()).matches());
  }

  /**
   * Reads a number with what stands behind it: a unit, a flag, a range of reference.
   *
   * @param isComma whether the block has decimal commas, so that a point may mark thousands
   */
  static Reading read(String text, boolean isComma) {
    Matcher matcher = VALUE.matcher(text.strip());
    if (!matcher.matches()) {
      return new Reading.Unclear("no number in it");
    }
    String digits = String.valueOf(matcher.group(2)).strip();
    Optional<String> number = number(digits, isComma);
    if (number.isEmpty()) {
      return new Reading.Unclear(
          "a comma, a point, a space or an apostrophe can mark decimals or thousands here: write"
              + " the number with a point for decimals and nothing else");
    }
    String unit = Optional.ofNullable(matcher.group(3)).orElse("");
    String rest = String.valueOf(matcher.group(4));
    if (PasteWords.isFlag(unit)) {
      Matcher after = Pattern.compile("[\\s;|]*([^\\s;|0-9<>(\\[][^\\s;|]*)?(.*)").matcher(rest);
      unit = after.matches() ? Optional.ofNullable(after.group(1)).orElse("") : unit;
      rest = after.matches() ? String.valueOf(after.group(2)) : rest;
    }
    return isAside(rest, unit)
        ? new Reading.Clear(new PastedValue(String.valueOf(matcher.group(1)), number.get(), unit))
        : new Reading.Unclear("something stands behind the number that is not known here");
  }

  /** What came of reading a number. */
  sealed interface Reading {
    /**
     * It can be read in one way only.
     *
     * @param value as it is read
     */
    record Clear(PastedValue value) implements Reading {}

    /**
     * It cannot.
     *
     * @param reason why
     */
    record Unclear(String reason) implements Reading {}
  }

  private static Optional<String> number(String digits, boolean isComma) {
    if (DECIMAL_COMMA.matcher(digits).matches()) {
      return Optional.of(digits.replace(',', '.'));
    }
    boolean isThousands = isComma && MAYBE_THOUSANDS.matcher(digits).matches();
    return PLAIN.matcher(digits).matches() && !isThousands ? Optional.of(digits) : Optional.empty();
  }

  /** Whether nothing stands there but a flag and a range of reference in the same unit. */
  private static boolean isAside(String rest, String unit) {
    String text = rest.replaceAll("[;|\\t]", " ").strip();
    if (text.isEmpty() || PasteWords.isFlag(text)) {
      return true;
    }
    String first = text.replaceFirst("\\s.*", "");
    if (PasteWords.isFlag(first)) {
      return isAside(text.substring(first.length()), unit);
    }
    String last = text.replaceFirst(".*\\s", "");
    if (PasteWords.isFlag(last)) {
      return isAside(text.substring(0, text.length() - last.length()), unit);
    }
    Matcher reference = REFERENCE.matcher(text);
    return reference.matches()
        && (String.valueOf(reference.group(1)).isEmpty() || unit.equals(reference.group(1)));
  }
}
