package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.division;

import cistern.report.markup.Element;
import cistern.report.markup.Node;

/**
 * How large, dark and clear the picture of a pair is seen. It is for whoever looks, in this tab,
 * and changes nothing of the case; without script the picture stands as it is.
 */
final class GelView {

  private GelView() {}

  /** The buttons and sliders, hidden until a script can answer them. */
  static Node tools() {
    return division(
            "gel-view",
            button("\u2212").with("data-zoom", "out").with("aria-label", "Smaller"),
            Element.of("output", "100 %").with("id", "gel-zoom").with("aria-label", "Size"),
            button("+").with("data-zoom", "in").with("aria-label", "Larger"),
            slider("contrast", "Contrast", 400),
            slider("brightness", "Brightness", 200),
            button("Invert").with("id", "gel-invert").with("aria-pressed", "false"),
            button("As it was").with("id", "gel-as-it-was"))
        .with("role", "group")
        .with("aria-label", "How the picture is shown")
        .with("hidden", "hidden");
  }

  private static Element button(String words) {
    return Element.of("button", words).with("type", "button").with("class", "second-button");
  }

  /** Per cent of how the picture was taken. */
  private static Element slider(String name, String words, int most) {
    String id = "gel-" + name;
    Element range =
        Element.of("input")
            .with("type", "range")
            .with("id", id)
            .with("data-filter", name)
            .with("min", "40")
            .with("max", Integer.toString(most))
            .with("step", "10")
            .with("value", "100");
    return Element.of("label", Element.of("span", words), range).with("for", id);
  }
}
