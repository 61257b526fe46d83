package cistern.report.markup;

/** A piece of markup. */
public sealed interface Node permits Element, Fragment, RawStyle, Text {

  /** Appends the markup, escaped. */
  void toMarkup(StringBuilder out);

  /** The markup, escaped. */
  default String toText() {
    StringBuilder out = new StringBuilder();
    toMarkup(out);
    return out.toString();
  }
}
