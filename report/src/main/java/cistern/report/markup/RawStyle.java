package cistern.report.markup;

/**
 * A style sheet of the program, which HTML reads as it stands.
 *
 * @param css without any character that XML and HTML would read differently
 */
public record RawStyle(String css) implements Node {

  /** Checks that the sheet is the same in XML and in HTML. */
  public RawStyle {
    if (css.indexOf('<') >= 0 || css.indexOf('&') >= 0 || css.contains("]]>")) {
      throw new IllegalArgumentException("a style sheet holds no markup");
    }
  }

  @Override
  public void toMarkup(StringBuilder out) {
    out.append("<style>").append(css).append("</style>");
  }
}
