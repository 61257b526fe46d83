package cistern.exchange.json;

import java.util.regex.Pattern;

/**
 * Where a value stands in a document.
 *
 * @param path a JSON path with 0-based indices, such as {@code results[3].unit}; empty for the
 *     whole document
 */
public record Place(String path) {

  /** The whole document. */
  public static final Place WHOLE = new Place("");

  private static final Pattern PLAIN = Pattern.compile("[A-Za-z_][A-Za-z0-9_-]*");

  /** The place of a member of this object; a name that is not a plain word is quoted. */
  public Place member(String name) {
    Shown shown = Shown.of(name);
    if (!PLAIN.matcher(shown.text()).matches()) {
      return new Place(path + "[\"" + shown.text() + "\"]");
    }
    return new Place(path.isEmpty() ? shown.text() : path + "." + shown.text());
  }

  /** The place of an item of this list. */
  public Place item(int index) {
    return new Place(path + "[" + index + "]");
  }
}
