package cistern.report.paper;

import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What is to be kept in mind about values, lettered, so that the same remark stands once. */
final class PaperRemarks {

  /** What stands between the remarks of one note. */
  static final String BETWEEN = "; ";

  private static final int LETTERS = 26;

  private final Map<String, String> letters = new LinkedHashMap<>();

  /** The letters of a note, which may hold several remarks. */
  Node mark(String note) {
    if (note.isEmpty()) {
      return Fragment.of();
    }
    String marks =
        Arrays.stream(note.split(BETWEEN, -1))
            .map(r -> letters.computeIfAbsent(r, n -> letter(letters.size())))
            .collect(Collectors.joining(", "));
    return Element.of("span", marks).with("class", "remark");
  }

  /** a to z, then aa, ab and so on. */
  static String letter(int index) {
    String last = String.valueOf((char) ('a' + index % LETTERS));
    return index < LETTERS ? last : letter(index / LETTERS - 1) + last;
  }

  /** All remarks, one after another; nothing when there are none. */
  Node toParagraph() {
    if (letters.isEmpty()) {
      return Fragment.of();
    }
    Element paragraph = Element.of("p").with("class", "remarks");
    for (Map.Entry<String, String> remark : letters.entrySet()) {
      paragraph =
          paragraph.with(
              List.of(
                  Element.of("span", remark.getValue()).with("class", "remark"),
                  new Text(" " + remark.getKey() + ". ")));
    }
    return paragraph;
  }
}
