package cistern.report.page;

import cistern.fact.Grounds;
import cistern.fact.Grounds.Citation;
import cistern.fact.Status;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The sources of a page, numbered in the order in which they are first named. */
public final class Sources {

  /** A comma and a space that no line breaks at. */
  private static final String AND = ",\u00A0";

  private final Map<Citation, String> numbers = new LinkedHashMap<>();
  private final Medium medium;

  /** No sources yet. */
  public Sources(Medium medium) {
    this.medium = medium;
  }

  /** The numbers of some grounds, on a screen as links to the sources. */
  public Node mark(Grounds grounds) {
    List<String> named =
        grounds.citations().stream()
            .map(c -> numbers.computeIfAbsent(c, n -> String.valueOf(numbers.size() + 1)))
            .toList();
    if (named.isEmpty()) {
      return Fragment.of();
    }
    return switch (medium) {
      case PAPER -> Html.span("cite", "[" + String.join(AND, named) + "]");
      case SCREEN -> Html.span("cite", "[").with(links(named)).withText("]");
    };
  }

  private static List<Node> links(List<String> named) {
    List<Node> links = new ArrayList<>();
    for (String number : named) {
      if (!links.isEmpty()) {
        links.add(new Text(AND));
      }
      links.add(
          Element.of("a", number)
              .with("href", "#source-" + number)
              .with("aria-label", "source " + number));
    }
    return links;
  }

  /** Whether none has been named. */
  public boolean isEmpty() {
    return numbers.isEmpty();
  }

  /** The sources, each marked where it is weaker than a publication that was read. */
  public Node toList() {
    List<Node> items = new ArrayList<>();
    numbers.forEach(
        (citation, number) ->
            items.add(
                Element.of("li", citation.source())
                    .with("id", "source-" + number)
                    .with(weakness(citation.status()))));
    return Element.of("ol").with("class", "sources").with(items);
  }

  private static Node weakness(Status status) {
    String words =
        switch (status) {
          case READ -> "";
          case DERIVED -> "calculated";
          case SECOND_HAND -> "second-hand";
          case LOCAL -> "local policy";
          case COMMON_PRACTICE -> "common practice, no source";
          case PROJECT_RULE -> "project rule";
          case MEMORY -> "unconfirmed: recalled, not checked against the source";
        };
    return words.isEmpty()
        ? Fragment.of()
        : Fragment.of(new Text(" "), Element.of("em", "(" + words + ")").with("class", "weak"));
  }
}
