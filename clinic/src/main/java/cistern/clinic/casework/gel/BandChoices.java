package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.paragraph;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.clinic.web.Html;
import cistern.clinic.web.Html.Choice;
import cistern.fact.Facts;
import cistern.finding.Chances;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The bands of one pair, each to keep or to strike, and what the kept ones amount to. */
final class BandChoices {

  private final GelCase gel;
  private final EditedPair bands;
  private final DrawnPlace drawn;

  private BandChoices(GelCase gel, EditedPair bands, DrawnPlace drawn) {
    this.gel = gel;
    this.bands = bands;
    this.drawn = drawn;
  }

  /** A field for every band of both lanes, and one to draw in what was missed. */
  static List<Element> fields(GelCase gel, EditedPair bands, DrawnPlace drawn) {
    BandChoices all = new BandChoices(gel, bands, drawn);
    return List.of(all.fields(bands.bands().csf()), all.fields(bands.bands().serum()));
  }

  private String fluid(LaneReading lane) {
    return bands.isCsf(lane) ? "fluid" : "serum";
  }

  private Element fields(LaneReading lane) {
    List<Node> rows = new ArrayList<>();
    for (int i = 0; i < lane.bands().size(); i++) {
      rows.add(field(lane, i));
    }
    String legend =
        (bands.isCsf(lane) ? "Spinal fluid" : "Serum")
            + ", lane "
            + (lane.index() + 1)
            + " ("
            + lane.quality().word()
            + ")";
    Node none = bands.readIn(lane) == 0 ? Html.note("empty", "No band was read.") : Html.nothing();
    return Element.of("fieldset", Element.of("legend", legend), none)
        .with(rows)
        .with(drawing(lane));
  }

  private Element field(LaneReading lane, int band) {
    BandMark mark = lane.bands().get(band);
    String key = GelEdit.key(lane.index(), band);
    String why = "why-" + key;
    Element box =
        Element.of("input")
            .with("type", "checkbox")
            .with("name", GelTyping.KEEP)
            .with("value", key)
            .with("id", "keep-" + key)
            .with("aria-describedby", why);
    String label = "Keep " + bands.name(lane, band) + ": " + where(lane, mark.matched());
    String place = "At " + LanePoint.words(mark.y());
    boolean isAdded = bands.isAdded(lane, band);
    return division(
        "band",
        bands.bands().isKept(lane, band) ? box.with("checked", "checked") : box,
        Element.of("label", isAdded ? label + ", " + mark.reason() : label)
            .with("for", "keep-" + key),
        Element.of(
                "p",
                isAdded
                    ? place + "; not seen by the program."
                    : place
                        + "; "
                        + Chances.of(mark.probability())
                        + " to be real; "
                        + mark.reason())
            .with("id", why)
            .with("class", "why"),
        bands.added(lane, band).<Node>map(a -> counterpart(lane, band, a)).orElse(Html.nothing()));
  }

  private String where(LaneReading lane, OptionalInt matched) {
    LaneReading other = bands.other(lane);
    return matched.isPresent()
        ? "also in "
            + (bands.isCsf(lane) ? "serum, " : "the fluid, ")
            + bands.name(other, matched.getAsInt())
        : "in the " + fluid(lane) + " only";
  }

  /** The choice of an added band's counterpart; its values say the band as well. */
  private Element counterpart(LaneReading lane, int band, AddedBand added) {
    String id = "shared-" + GelEdit.key(lane.index(), band);
    LaneReading other = bands.other(lane);
    List<Choice> choices = new ArrayList<>();
    choices.add(
        new Choice(
            GelTyping.text(added.withMatched(OptionalInt.empty())),
            "nothing: in the " + fluid(lane) + " only"));
    for (int i = 0; i < other.bands().size(); i++) {
      boolean isWanted = added.matched().equals(OptionalInt.of(i));
      if (isWanted || bands.isChoice(lane, band, i)) {
        choices.add(
            new Choice(
                GelTyping.text(added.withMatched(OptionalInt.of(i))),
                bands.name(other, i) + ", at " + LanePoint.words(other.bands().get(i).y())));
      }
    }
    return division(
        "shared",
        Element.of("label", bands.name(lane, band) + " is shared with").with("for", id),
        Html.select(GelTyping.ADDED, GelTyping.text(added), choices).with("id", id));
  }

  /** Where the place of a band is typed that the program missed. */
  private Element drawing(LaneReading lane) {
    String name = DrawnPlace.field(lane.index());
    String trouble = drawn.troubles().getOrDefault(lane.index(), "");
    String hint = "n-" + name;
    Element input =
        Html.input(name, drawn.typed().getOrDefault(lane.index(), ""))
            .with("id", name)
            .with("inputmode", "decimal")
            .with("autocomplete", "off");
    return division(
        "drawing",
        Element.of(
                "label",
                "A band that was missed in the "
                    + fluid(lane)
                    + ": its place, in pixels from the top ("
                    + DrawnPlace.range(bands.window(gel.reading()))
                    + ")")
            .with("for", name),
        trouble.isEmpty()
            ? input
            : input.with("aria-invalid", "true").with("aria-describedby", hint),
        Html.button("Draw it in the " + fluid(lane))
            .with("formaction", gel.path() + "/draw")
            .with("id", "draw-" + lane.index())
            .with("class", "second-button"),
        trouble.isEmpty()
            ? Html.nothing()
            : Html.note("doubt", trouble).with("id", hint).with("role", "alert"));
  }

  /** What the kept bands amount to, beside what was read. */
  static Node counts(GelCase gel, GelEdit edit, Facts facts) {
    Optional<PatternChances> chances =
        gel.isPatterned() ? PatternChances.of(gel, edit, facts) : Optional.empty();
    return gel.bandsKept(edit)
        .<Node>map(
            bands ->
                Fragment.of(
                    Element.of("h2", "As you keep them"),
                    table(bands.bands().counts(), gel.countsRead()),
                    paragraph(sentence(bands.bands().counts(), edit, facts)),
                    chances.<Node>map(PatternChances::toLine).orElse(Html.nothing()),
                    disputed(bands.disputed()),
                    gel.isAsRead(edit)
                        ? Html.nothing()
                        : Html.note(
                            "quiet",
                            "When you confirm, your counts stand; what was read is kept.")))
        .orElseGet(() -> Html.note("empty", "Nothing to count: a lane of the pair is missing."));
  }

  private static Node disputed(List<String> names) {
    return names.isEmpty()
        ? Html.nothing()
        : Html.note(
            "doubt",
            String.join(", ", names)
                + ": the chosen counterpart is another band's already, so it counts as alone.");
  }

  private static Node table(BandCounts kept, Optional<BandCounts> read) {
    BandCounts seen = read.orElse(BandCounts.NONE);
    return Element.of("dl")
        .with("class", "kept-counts")
        .with(
            count("Only in the fluid", kept.csfOnly(), seen.csfOnly()),
            count("In both", kept.shared(), seen.shared()),
            count("Only in serum", kept.serumOnly(), seen.serumOnly()));
  }

  private static Element count(String where, OptionalInt kept, OptionalInt read) {
    return division(
        "count",
        Element.of("dt", where),
        Element.of("dd", Element.of("strong", number(kept)).with("class", "kept-count")),
        Element.of("dd", "read " + number(read)).with("class", "quiet"));
  }

  private static String number(OptionalInt count) {
    return count.isPresent() ? Integer.toString(count.getAsInt()) : "not counted";
  }

  private static String sentence(BandCounts counts, GelEdit edit, Facts facts) {
    Optional<BandPattern> ladder =
        edit.isLadder() ? Optional.of(BandPattern.LADDER) : Optional.empty();
    BandReading reading =
        BandReading.of(
            new BandReport.Counted(counts, ladder, BandReport.Origin.UNKNOWN, Optional.empty()),
            facts);
    return reading.pattern().map(BandChoices::words).orElse("No pattern follows")
        + "; "
        + reading.verdict().word()
        + " at the cut-off of "
        + reading.cutOff()
        + ".";
  }

  /** A pattern as people name it. */
  static String words(BandPattern pattern) {
    return "Pattern "
        + pattern.number()
        + switch (pattern) {
          case NORMAL -> ", bands of the fluid alone not demonstrated";
          case LOCAL -> ", bands only in the fluid";
          case LOCAL_AND_SYSTEMIC -> ", shared bands and more in the fluid";
          case SYSTEMIC -> ", the same bands in both";
          case LADDER -> ", a regular ladder in both";
        };
  }
}
