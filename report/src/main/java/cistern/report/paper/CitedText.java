package cistern.report.paper;

import cistern.fact.Reference;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import java.util.ArrayList;
import java.util.List;

/**
 * The words of a citation with a link on each publication: by DOI, else to PubMed or its own
 * address. A link tells the other side nothing of where it stands; a book by its ISBN has none.
 */
public final class CitedText {

  private CitedText() {}

  /**
   * Words that name some publications.
   *
   * @param words as a footnote says them
   * @param references those that are named in them, in order
   */
  public static Fragment of(String words, List<Reference> references) {
    List<Node> parts = new ArrayList<>();
    int done = 0;
    for (Reference reference : references) {
      String named = reference.toText();
      int at = words.indexOf(named, done);
      if (at < 0 || !reference.address().startsWith("http")) {
        continue;
      }
      parts.add(new Text(words.substring(done, at)));
      parts.add(Element.of("a", named).with("href", reference.address()).with("rel", "noreferrer"));
      done = at + named.length();
    }
    parts.add(new Text(words.substring(done)));
    return new Fragment(parts);
  }
}
