package cistern.clinic.web;

import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import java.util.List;
import java.util.stream.IntStream;

/** The shapes that screens are made of. */
public final class Html {

  private Html() {}

  /** A paragraph. */
  public static Element paragraph(String text) {
    return Element.of("p", text);
  }

  /** A paragraph with something to be told by its class. */
  public static Element note(String kind, String text) {
    return paragraph(text).with("class", kind);
  }

  /** A part of a page with a class. */
  public static Element division(String kind, Node... children) {
    return Element.of("div", children).with("class", kind);
  }

  /** A part of a page with a heading that names it. */
  public static Element section(String id, String heading, Node... children) {
    return Element.of("section", Element.of("h2", heading).with("id", id))
        .with("aria-labelledby", id)
        .with(children);
  }

  /** A link. */
  public static Element link(String path, String text) {
    return Element.of("a", text).with("href", path);
  }

  /** A button that sends its form. */
  public static Element button(String text) {
    return Element.of("button", text).with("type", "submit");
  }

  /** A field with its label before it. */
  public static Element field(String label, Element control) {
    String id = "f-" + control.attributes().get("name");
    return division("field", Element.of("label", label).with("for", id), control.with("id", id));
  }

  /** A field for a line of text. */
  public static Element input(String name, String value) {
    return Element.of("input").with("type", "text").with("name", name).with("value", value);
  }

  /** A value that its form sends along unseen. */
  public static Element hidden(String name, String value) {
    return Element.of("input").with("type", "hidden").with("name", name).with("value", value);
  }

  /** A field for lines of text. */
  public static Element area(String name, String value) {
    return Element.of("textarea", "\n" + value).with("name", name).with("rows", "6");
  }

  /**
   * A choice.
   *
   * @param choices each a value and its words
   */
  public static Element select(String name, String value, List<Choice> choices) {
    return Element.of("select")
        .with("name", name)
        .with(choices.stream().map(c -> option(c, value)).toList());
  }

  /**
   * One thing to choose.
   *
   * @param value as it is sent
   * @param words as they are read
   */
  public record Choice(String value, String words) {}

  private static Element option(Choice choice, String value) {
    Element option = Element.of("option", choice.words()).with("value", choice.value());
    return choice.value().equals(value) ? option.with("selected", "selected") : option;
  }

  /** A table that may be scrolled by keyboard where it is too wide. */
  public static Node table(String caption, List<String> head, List<List<Node>> rows) {
    Element top =
        Element.of("tr")
            .with(head.stream().map(h -> Element.of("th", h).with("scope", "col")).toList());
    List<Element> body =
        rows.stream()
            .map(
                cells ->
                    Element.of("tr")
                        .with(
                            IntStream.range(0, cells.size())
                                .mapToObj(i -> cell(head.get(i), cells.get(i)))
                                .toList()))
            .toList();
    return division(
            "scroll",
            Element.of(
                    "table",
                    Element.of("caption", caption),
                    Element.of("thead", top),
                    Element.of("tbody").with(body))
                .with("class", "list"))
        .with("tabindex", "0")
        .with("role", "region")
        .with("aria-label", caption);
  }

  /** A cell, which says its heading itself where the page is too narrow for columns. */
  public static Element cell(String heading, Node... content) {
    return Element.of("td", content).with("data-label", heading);
  }

  /** A list; a sentence where it is empty. */
  public static Node list(List<? extends Node> items, String empty) {
    return items.isEmpty()
        ? note("empty", empty)
        : Element.of("ul").with(items.stream().map(i -> Element.of("li", i)).toList());
  }

  /** A text. */
  public static Node text(String text) {
    return new Text(text);
  }

  /** Nothing. */
  public static Node nothing() {
    return Fragment.of();
  }
}
