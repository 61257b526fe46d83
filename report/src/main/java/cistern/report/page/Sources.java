package cistern.report.page;

import cistern.fact.Grounds;
import cistern.fact.Grounds.Citation;
import cistern.fact.Status;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The sources of a page, numbered in the order in which they are first named. */
final class Sources {

  private final Map<Citation, Integer> numbers = new LinkedHashMap<>();

  /** The numbers of some grounds as links to the sources. */
  Node mark(Grounds grounds) {
    if (grounds.citations().isEmpty()) {
      return Fragment.of();
    }
    List<Node> links = new ArrayList<>();
    for (Citation citation : grounds.citations()) {
      String number = String.valueOf(numbers.computeIfAbsent(citation, n -> numbers.size() + 1));
      if (!links.isEmpty()) {
        links.add(new cistern.report.markup.Text(", "));
      }
      links.add(
          Element.of("a", number)
              .with("href", "#source-" + number)
              .with("title", "Source " + number));
    }
    return Element.of("span").with("class", "cite").withText("[").with(links).withText("]");
  }

  /** The sources, each marked where it is weaker than a publication that was read. */
  Node toList() {
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
        : Fragment.of(
            new cistern.report.markup.Text(" "),
            Element.of("em", "(" + words + ")").with("class", "weak"));
  }
}
