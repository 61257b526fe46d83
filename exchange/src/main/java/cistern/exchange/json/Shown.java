package cistern.exchange.json;

/**
 * A unit or a field's name as it may be repeated in a message: shortened, and on one line.
 *
 * @param text without control, formatting or unpaired surrogate characters, which are escaped
 */
public record Shown(String text) {

  /** Characters after which a name is cut. */
  static final int LONGEST = 40;

  /** The shown form of a name or unit from a file. */
  public static Shown of(String original) {
    StringBuilder shown = new StringBuilder();
    original.codePoints().limit(LONGEST).forEach(point -> shown.append(escaped(point)));
    boolean isCut = original.codePointCount(0, original.length()) > LONGEST;
    return new Shown(isCut ? shown.append('…').toString() : shown.toString());
  }

  private static String escaped(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          "\\u" + "%04x".formatted(point);
      default -> point == '"' || point == '\\' ? "\\" + (char) point : Character.toString(point);
    };
  }
}
