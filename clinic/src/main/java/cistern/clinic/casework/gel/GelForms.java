package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.paragraph;

import cistern.clinic.setting.Setting;
import cistern.clinic.web.Html;
import cistern.clinic.web.Html.Choice;
import cistern.clinic.web.PageRequest;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.PairReading;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The forms in which a picture is sent and its lanes are named. */
final class GelForms {

  static final String PICTURE = "picture";
  static final String LANES = "lanes";
  static final String PAIR = "pair";

  private static final int MILLION = 1_000_000;

  private GelForms() {}

  /**
   * What is typed and what is wrong with it.
   *
   * @param lanes as typed
   * @param pair as typed
   * @param troubles by field
   * @param form a word that tells the fields of one form from those of another on the same page
   */
  record Typed(String lanes, String pair, Map<String, String> troubles, String form) {

    Typed {
      troubles = Map.copyOf(troubles);
    }

    static Typed of(String lanes, String pair) {
      return new Typed(lanes, pair, Map.of(), "send");
    }

    Typed withTrouble(String field, String sentence) {
      return new Typed(lanes, pair, Map.of(field, sentence), form);
    }

    Typed withForm(String word) {
      return new Typed(lanes, pair, troubles, word);
    }
  }

  /** The form for a picture. */
  static Element upload(PageRequest visit, String path, long base, Typed typed) {
    int most = Setting.PICTURE_BYTES.number();
    Element file =
        Element.of("input")
            .with("type", "file")
            .with("name", PICTURE)
            .with("accept", "image/png,image/jpeg,image/tiff,.png,.jpg,.jpeg,.tif,.tiff")
            .with("data-most", Integer.toString(most))
            .with(
                "data-too-large",
                "This file is larger than the " + most / MILLION + " MB that are taken.");
    return visit
        .form(path)
        .with("enctype", "multipart/form-data")
        .with("class", "upload")
        .with("data-busy", "The picture is sent and read; this takes some seconds.")
        .with(
            base(base),
            field(
                "Picture of the gel: PNG, JPEG or TIFF, at most " + most / MILLION + " MB",
                file,
                typed,
                PICTURE),
            lanes(typed),
            pair(typed),
            button("Read the picture"),
            paragraph("Only the lanes are shown here: what is written beside them is not.")
                .with("class", "quiet"));
  }

  static Element base(long base) {
    return hidden("base", Long.toString(base));
  }

  private static Node lanes(Typed typed) {
    Element input =
        Html.input(LANES, typed.lanes()).with("autocomplete", "off").with("spellcheck", "false");
    return division(
        "with-hint",
        field("Lanes from left to right; leave it empty to let them be found", input, typed, LANES),
        Html.note(
            "quiet",
            "csf, serum, control or blank with commas: csf,serum,csf,serum,control. A number"
                + " joins lanes that are not neighbours: csf:1,csf:2,serum:1,serum:2. A gel on its"
                + " side is named from top to bottom. Unnamed lanes are paired as neighbours, the"
                + " left one taken for the fluid, and always need your eye."));
  }

  private static Node pair(Typed typed) {
    return field(
        "Which pair is this person's: 0 for the first; empty to choose when you see them",
        Html.input(PAIR, typed.pair()).with("inputmode", "numeric").with("autocomplete", "off"),
        typed,
        PAIR);
  }

  private static Element field(String label, Element control, Typed typed, String name) {
    String id = typed.form() + "-" + name;
    Element labelled = Element.of("label", label).with("for", id);
    String trouble = typed.troubles().getOrDefault(name, "");
    if (trouble.isEmpty()) {
      return division("field", labelled, control.with("id", id));
    }
    String note = "n-" + name;
    return division(
        "field",
        labelled,
        control.with("id", id).with("aria-invalid", "true").with("aria-describedby", note),
        Element.of("p", trouble).with("class", "doubt").with("id", note).with("role", "alert"));
  }

  /** The form in which the lanes of a kept picture are named, and the person's pair is chosen. */
  static Element name(PageRequest visit, String path, String picture, long base, Typed typed) {
    return visit
        .form(path + "/take")
        .with(
            base(base),
            hidden(PICTURE, picture),
            lanes(typed),
            pair(typed),
            button("Read with these lanes"));
  }

  /** The form in which this person's pair is chosen. */
  static Element choose(
      PageRequest visit, String path, String picture, long base, GelReading reading) {
    List<Choice> choices =
        reading.pairs().stream()
            .map(p -> new Choice(Integer.toString(p.pair()), "Pair " + words(p)))
            .toList();
    return visit
        .form(path + "/take")
        .with(
            base(base),
            hidden(PICTURE, picture),
            hidden(LANES, visit.field(LANES)),
            Html.field("This person's pair", Html.select(PAIR, "", withNone(choices))),
            button("Take this pair"));
  }

  private static List<Choice> withNone(List<Choice> choices) {
    List<Choice> all = new java.util.ArrayList<>();
    all.add(new Choice("", "not chosen"));
    all.addAll(choices);
    return all;
  }

  /** A pair with its lanes, numbered as the picture shows them. */
  static String words(PairReading pair) {
    return pair.pair()
        + ": "
        + lane("fluid in lane ", pair.csfLane())
        + ", "
        + lane("serum in lane ", pair.serumLane());
  }

  private static String lane(String words, OptionalInt lane) {
    return lane.isPresent() ? words + (lane.getAsInt() + 1) : words + "?";
  }
}
