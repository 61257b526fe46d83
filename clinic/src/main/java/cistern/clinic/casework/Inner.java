package cistern.clinic.casework;

import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.RawStyle;
import cistern.report.markup.Text;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.Set;

/**
 * A paper inside a page that holds several: its headings stand lower, and its names bear those of
 * the paper, so that none stands twice.
 */
final class Inner {

  private static final Map<String, String> LOWER = Map.of("h1", "h3", "h2", "h4", "h3", "h5");
  private static final Set<String> NAMES = Set.of("id", "aria-labelledby", "aria-describedby");

  private Inner() {}

  static List<Node> of(List<Node> nodes, String paper) {
    return nodes.stream().map(node -> of(node, paper)).toList();
  }

  private static Node of(Node node, String paper) {
    return switch (node) {
      case Element element -> element(element, paper);
      case Fragment fragment -> new Fragment(of(fragment.children(), paper));
      case RawStyle style -> style;
      case Text text -> text;
    };
  }

  private static Element element(Element element, String paper) {
    SequencedMap<String, String> attributes = new LinkedHashMap<>();
    element
        .attributes()
        .forEach(
            (name, value) -> {
              if (NAMES.contains(name)) {
                attributes.put(name, named(value, paper));
              } else if (name.equals("href") && value.startsWith("#")) {
                attributes.put(name, "#" + named(value.substring(1), paper));
              } else {
                attributes.put(name, value);
              }
            });
    return new Element(
        LOWER.getOrDefault(element.name(), element.name()),
        attributes,
        of(element.children(), paper));
  }

  /** Each name with the paper before it. */
  private static String named(String names, String paper) {
    return paper + "-" + names.replace(" ", " " + paper + "-");
  }
}
