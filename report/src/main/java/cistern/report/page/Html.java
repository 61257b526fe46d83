package cistern.report.page;

import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.List;
import java.util.function.Function;

/** The few shapes of text that pages are made of. */
final class Html {

  private Html() {}

  static Element heading(String text) {
    return Element.of("h2", text);
  }

  static Element paragraph(String text) {
    return Element.of("p", text);
  }

  static Element division(String cssClass, Node... children) {
    return Element.of("div", children).with("class", cssClass);
  }

  static Element span(String cssClass, String text) {
    return Element.of("span", text).with("class", cssClass);
  }

  /** A section with a heading that names it. */
  static Element section(String id, String heading, Node... children) {
    return Element.of("section")
        .with("aria-labelledby", id)
        .with("class", id)
        .with(Element.of("h2", heading).with("id", id))
        .with(children);
  }

  /** A list with an item for every thing. */
  static <T> Element list(List<? extends T> things, Function<T, Node> item) {
    return Element.of("ul")
        .with(things.stream().map(t -> Element.of("li", item.apply(t))).toList());
  }
}
