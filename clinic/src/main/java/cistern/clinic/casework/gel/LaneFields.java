package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.casework.gel.LanesTyped.Row;
import cistern.clinic.web.Html;
import cistern.clinic.web.Html.Choice;
import cistern.gel.lanes.LaneKind;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The fields in which all lanes of a gel are named, paired and placed by numbers; dragging a lane
 * on the picture fills them in.
 *
 * @param gel the gel as it stands
 * @param typed what stands in the fields
 * @param form the form that they are sent with
 */
record LaneFields(GelCase gel, LanesTyped typed, String form) {

  /** Each field with the heading of its column. */
  private static final List<Choice> HEADINGS =
      List.of(
          new Choice(LanesTyped.KIND, "What is on it"),
          new Choice(LanesTyped.NUMBER, "Pair"),
          new Choice(LanesTyped.CENTRE, "Centre"),
          new Choice(LanesTyped.WIDTH, "Width"));

  private static final List<Choice> KINDS =
      List.of(
          new Choice(LaneKind.CSF.word(), "fluid (csf)"),
          new Choice(LaneKind.SERUM.word(), "serum"),
          new Choice(LaneKind.CONTROL.word(), "control"),
          new Choice(LaneKind.BLANK.word(), "empty"),
          new Choice(LanesTyped.NONE, "no lane here"));

  Node toNode() {
    Node said = note("lanes-said", "").with("aria-hidden", "true");
    return division("lanes", said, numbers(), own(), buttons());
  }

  private Node numbers() {
    List<Element> rows = new ArrayList<>();
    for (int i = 0; i < typed.rows().size(); i++) {
      rows.add(row(i, typed.rows().get(i)));
    }
    Element head = Element.of("tr", Element.of("th", "Lane").with("scope", "col"));
    for (Choice heading : HEADINGS) {
      head = head.with(Element.of("th", heading.words()).with("scope", "col"));
    }
    Element table =
        Element.of(
                "table",
                Element.of(
                    "caption",
                    "Every lane from the left; places in pixels of the picture at half its height"),
                Element.of("thead", head),
                Element.of("tbody").with(rows))
            .with("class", "list lane-list");
    Element details =
        Element.of("details", Element.of("summary", "Name, pair and place by numbers"), table);
    return typed.troubles().isEmpty() ? details : details.with("open", "open");
  }

  private Element row(int i, Row row) {
    boolean isNew = i == typed.rows().size() - 1;
    String name = isNew ? "Another lane" : "Lane " + (i + 1);
    List<Element> fields =
        List.of(kind(row.kind()), number(row.pair()), number(row.centre()), number(row.width()));
    Element cells =
        Element.of(
            "tr",
            Element.of("th", isNew ? "another" : Integer.toString(i + 1)).with("scope", "row"));
    for (int column = 0; column < fields.size(); column++) {
      cells = cells.with(cell(HEADINGS.get(column), i, name, fields.get(column)));
    }
    return cells;
  }

  private static Element kind(String word) {
    List<Choice> choices = new ArrayList<>(KINDS);
    if (word.isEmpty()) {
      choices.addFirst(new Choice("", "not said"));
    }
    return Html.select(LanesTyped.KIND, word, choices);
  }

  private static Element number(String value) {
    return Html.input("", value).with("inputmode", "decimal").with("autocomplete", "off");
  }

  private Element cell(Choice heading, int i, String lane, Element control) {
    String id = LanesTyped.id(heading.value(), i);
    String label = lane + ": " + heading.words().toLowerCase(Locale.ROOT);
    Element labelled = control(heading.value(), id, control).with("aria-label", label);
    return Html.cell(heading.words(), labelled, trouble(id));
  }

  private Element control(String name, String id, Element control) {
    Element named =
        control.with("name", name).with("id", id).with("form", form).with("data-unkept", "");
    return typed.troubles().containsKey(id)
        ? named.with("aria-invalid", "true").with("aria-describedby", "n-" + id)
        : named;
  }

  private Node trouble(String id) {
    String words = typed.troubles().getOrDefault(id, "");
    return words.isEmpty()
        ? nothing()
        : note("doubt", words).with("id", "n-" + id).with("role", "alert");
  }

  private Node own() {
    String id = LanesTyped.OWN;
    return division(
        "own-pair",
        Element.of("label", "This person's pair").with("for", id),
        control(id, id, number(typed.pair())),
        trouble(id));
  }

  private Node buttons() {
    Element read = button("Read with the lanes as placed", "/lanes").with("id", "lanes-read");
    return division(
        "actions",
        read,
        gel.placings().done().isEmpty()
            ? nothing()
            : button("Undo the last placing", "/lanes/back").with("id", "lanes-back"),
        gel.placings().undone().isEmpty()
            ? nothing()
            : button("Place again what was undone", "/lanes/forth").with("id", "lanes-forth"));
  }

  private Element button(String words, String path) {
    return Html.button(words)
        .with("form", form)
        .with("formaction", gel.path() + path)
        .with("class", "second-button");
  }
}
