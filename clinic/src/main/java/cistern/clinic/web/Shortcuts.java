package cistern.clinic.web;

import cistern.report.markup.Element;
import java.util.List;

/**
 * The keys that do something, shown on request. They can be switched off there, so that nobody
 * presses one by accident (WCAG 2.2, 2.1.4).
 */
final class Shortcuts {

  private static final List<Shortcut> ALL =
      List.of(
          Shortcut.of("?", "Show or hide these keys"),
          Shortcut.of("g d", "The day"),
          Shortcut.of("g c", "Cases"),
          Shortcut.of("g w", "Where a case stands"),
          Shortcut.of("g 1", "The first step of a case; g 2 the second, and so on"),
          Shortcut.of("g s", "What a case says"),
          Shortcut.of("g r", "Report of a case"),
          Shortcut.of(
              "+",
              "A larger picture of a gel; − smaller, 0 as it was, . and , contrast, i inverted"),
          Shortcut.of("↓", "The next band of a gel; ↑ the one before, Space keeps or strikes"),
          Shortcut.of("Ctrl Z", "Take the last placing of lanes back"),
          Shortcut.of("Ctrl Enter", "Send the form that you type in"),
          Shortcut.of("Esc", "Close this"));

  private Shortcuts() {}

  /**
   * One shortcut.
   *
   * @param keys one after the other
   * @param words what they do
   */
  private record Shortcut(List<String> keys, String words) {
    static Shortcut of(String keys, String words) {
      return new Shortcut(List.of(keys.split(" ", -1)), words);
    }
  }

  /** What asks for them. */
  static Element button() {
    return Element.of("button", "Keyboard shortcuts (?)")
        .with("type", "button")
        .with("class", "plain")
        .with("id", "keys-button")
        .with("hidden", "hidden");
  }

  /** The keys, hidden until they are asked for. */
  static Element dialog() {
    List<Element> rows = ALL.stream().map(Shortcuts::row).toList();
    Element on =
        Element.of("input")
            .with("type", "checkbox")
            .with("id", "keys-on")
            .with("checked", "checked");
    return Element.of(
            "dialog",
            Element.of("h2", "Keyboard shortcuts").with("id", "keys-title"),
            Element.of(
                "table",
                Element.of("caption", "Keys one after the other"),
                Element.of("tbody").with(rows)),
            Html.division(
                "band",
                on,
                Element.of("label", "Keys without Ctrl do something").with("for", "keys-on")),
            Element.of("button", "Close").with("type", "button").with("id", "keys-close"))
        .with("id", "keys")
        .with("aria-labelledby", "keys-title");
  }

  private static Element row(Shortcut shortcut) {
    Element keys =
        Element.of("th")
            .with("scope", "row")
            .with(shortcut.keys().stream().map(k -> Element.of("kbd", k)).toList());
    return Element.of("tr", keys, Element.of("td", shortcut.words()));
  }
}
