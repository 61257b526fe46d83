package cistern.clinic.casework;

import cistern.finding.FindingCode;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.RawStyle;
import cistern.report.markup.Text;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The table of values with a link from each name to why the value is what it is. */
final class WhyLinks {

  private WhyLinks() {}

  /** A page with its links; everything else of it stays as it is. */
  static List<Node> of(List<Node> nodes) {
    return nodes.stream().map(WhyLinks::of).toList();
  }

  private static Node of(Node node) {
    return switch (node) {
      case Element element -> of(element);
      case Fragment fragment -> new Fragment(of(fragment.children()));
      case RawStyle style -> style;
      case Text text -> text;
    };
  }

  private static Element of(Element element) {
    boolean isName =
        element.name().equals("th")
            && element.attributes().getOrDefault("class", "").equals("finding");
    Optional<FindingCode> code = isName ? code(element) : Optional.empty();
    return code.map(
            c ->
                new Element(
                    element.name(),
                    element.attributes(),
                    List.of(Element.of("a", c.term()).with("href", "#" + Why.id(c)))))
        .orElseGet(() -> new Element(element.name(), element.attributes(), of(element.children())));
  }

  private static Optional<FindingCode> code(Element name) {
    return name.children().size() == 1 && name.children().getFirst() instanceof Text text
        ? Arrays.stream(FindingCode.values()).filter(c -> c.term().equals(text.value())).findFirst()
        : Optional.empty();
  }
}
