package cistern.exchange.json;

import java.util.regex.Pattern;

/**
 * Where a value stands in a document.
 *
 * @param path a JSON path with 0-based indices, such as {@code results[3].unit}; empty for the
 *     whole document
 */
public record Place(String path) {

  /** Figures in a name that is none: a broken file can put a patient's value there. */
  private static final Pattern FIGURES = Pattern.compile("\\d{2,}");

  /** The whole document. */
  public static final Place WHOLE = new Place("");

  private static final Pattern PLAIN = Pattern.compile("[A-Za-z_][A-Za-z0-9_-]*");

  /** The place of a member of this object; a name that is not a plain word is quoted. */
  public Place member(String name) {
    if (PLAIN.matcher(name).matches() && Shown.of(name).text().equals(name)) {
      return new Place(path.isEmpty() ? name : path + "." + name);
    }
    String shown = Shown.of(FIGURES.matcher(name).replaceAll("#")).text();
    return new Place(path + "[\"" + shown + "\"]");
  }

  /** The place of an item of this list. */
  public Place item(int index) {
    return new Place(path + "[" + index + "]");
  }
}
