package cistern.report.markup;

/**
 * Characters, which are never read as markup.
 *
 * @param value any text; what XML cannot hold is written as U+FFFD
 */
public record Text(String value) implements Node {

  private static final char REPLACEMENT = '\uFFFD';

  @Override
  public void toMarkup(StringBuilder out) {
    toEscaped(value, out);
  }

  /**
   * Appends characters so that neither a tag, an attribute nor an entity can end or begin in them.
   */
  static void toEscaped(String value, StringBuilder out) {
    value.codePoints().forEach(c -> toEscaped(c, out));
  }

  private static void toEscaped(int c, StringBuilder out) {
    switch (c) {
      case '&' -> out.append("&amp;");
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '"' -> out.append("&quot;");
      case '\'' -> out.append("&#39;");
      default -> {
        if (isXml(c)) {
          out.appendCodePoint(c);
        } else {
          out.append(REPLACEMENT);
        }
      }
    }
  }

  /** Whether XML 1.0 allows the character (section 2.2, Char), C1 controls left out. */
  private static boolean isXml(int c) {
    return c == '\t'
        || c == '\n'
        || (c >= ' ' && c < 0x7F)
        || (c >= 0xA0 && c <= 0xD7FF)
        || (c >= 0xE000 && c <= 0xFFFD)
        || c >= 0x10000;
  }
}
