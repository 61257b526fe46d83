package cistern.clinic.form;

import cistern.clinic.web.Html;
import cistern.exchange.json.Json;
import cistern.report.markup.Element;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One field of a form.
 *
 * @param section in which the heading is folded away
 * @param group the heading that it stands under
 * @param path where it lies in the work-up file
 * @param kind what is typed
 * @param label what is asked
 * @param choices the words of a choice; where they are read otherwise than they stand in a file,
 *     {@code aqp4-igg=AQP4-IgG}
 */
record FormField(
    Optional<String> section,
    String group,
    JsonPath path,
    FieldKind kind,
    String label,
    List<String> choices)
    implements Typable {

  FormField {
    choices = List.copyOf(choices);
  }

  @Override
  public String key() {
    return path.toText();
  }

  @Override
  public String toTyped(Json.Structure file, ZoneId zone) {
    return path.find(file).map(json -> kind.toTyped(json, zone)).orElse("");
  }

  @Override
  public Json.Structure with(Json.Structure file, String typed, ZoneId zone) {
    return path.with(file, kind.toJson(typed, zone));
  }

  @Override
  public boolean isQuestion() {
    return kind == FieldKind.ANSWER;
  }

  @Override
  public boolean isAt(String place) {
    return place.equals(key());
  }

  @Override
  public String toWords(String typed) {
    return switch (kind) {
      case TEXT, LINES -> typed;
      case NUMBER -> label + " " + typed;
      case TIME -> label + " " + FieldKind.inWords(typed);
      case ANSWER -> label + ": " + typed;
      case CHOICE ->
          isUnit()
              ? typed.replace("10*9", "10⁹").replace("10*3", "10³")
              : label + " " + worded(typed);
    };
  }

  private boolean isUnit() {
    return key().endsWith(".unit");
  }

  private String worded(String typed) {
    return words(choices, typed).stream()
        .filter(c -> c.value().equals(typed))
        .map(Html.Choice::words)
        .findFirst()
        .orElse(typed);
  }

  @Override
  public Element toControl(String typed) {
    return switch (kind) {
      case TEXT -> Html.input(key(), typed);
      case LINES -> Html.area(key(), typed);
      case NUMBER -> Html.input(key(), typed).with("inputmode", "decimal");
      case TIME -> time(typed);
      case ANSWER -> answer(typed);
      case CHOICE -> Html.select(key(), typed, words(choices, typed));
    };
  }

  /** Yes, no, or nothing said: one press each. */
  private Element answer(String typed) {
    String open = typed.equals("unknown") ? typed : "";
    return Element.of(
            "div",
            button("yes", Element.of("span", "yes"), typed),
            button("no", Element.of("span", "no"), typed),
            button(
                open,
                Element.of("span", Element.of("span", "not known").with("class", "unseen"))
                    .with(Element.of("span", "?").with("aria-hidden", "true")),
                typed))
        .with("role", "radiogroup")
        .with("class", "answers");
  }

  private Element button(String value, Element words, String typed) {
    Element radio =
        Element.of("input").with("type", "radio").with("name", key()).with("value", value);
    return Element.of(
        "label", value.equals(typed) ? radio.with("checked", "checked") : radio, words);
  }

  private Element time(String typed) {
    boolean isTime = typed.isEmpty() || typed.matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d");
    return Html.input(key(), typed).with("type", isTime ? "datetime-local" : "text");
  }

  /** The words, an empty one first; one that the file holds beside them is kept. */
  private static List<Html.Choice> words(List<String> words, String typed) {
    List<Html.Choice> all = new ArrayList<>();
    all.add(new Html.Choice("", "not said"));
    words.stream().map(FormField::choice).forEach(all::add);
    if (!typed.isEmpty() && all.stream().noneMatch(c -> c.value().equals(typed))) {
      all.add(new Html.Choice(typed, typed));
    }
    return all;
  }

  private static Html.Choice choice(String word) {
    String[] both = word.split("=", 2);
    return new Html.Choice(both[0], both[both.length - 1].replace('_', ' '));
  }
}
