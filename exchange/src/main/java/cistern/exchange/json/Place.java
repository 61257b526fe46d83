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

  /** The place of a member of this object; a name that is not a plain word is quoted. */
  public Place member(String name) {
    if (isPlain(name)) {
      return new Place(path.isEmpty() ? name : path + "." + name);
    }
    String shown = Shown.of(FIGURES.matcher(name).replaceAll("#")).text();
    return new Place(path + "[\"" + shown + "\"]");
  }

  /** A plain word that is shown whole. */
  private static boolean isPlain(String name) {
    if (name.isEmpty() || name.length() > Shown.LONGEST || !isLetter(name.charAt(0))) {
      return false;
    }
    for (int i = 1; i < name.length(); i++) {
      char sign = name.charAt(i);
      if (!isLetter(sign) && sign != '-' && (sign < '0' || sign > '9')) {
        return false;
      }
    }
    return true;
  }

  private static boolean isLetter(char sign) {
    return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') || sign == '_';
  }

  /** The place of an item of this list. */
  public Place item(int index) {
    return new Place(path + "[" + index + "]");
  }
}
