package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.paragraph;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.clinic.web.Html;
import cistern.fact.Facts;
import cistern.finding.Chances;
import cistern.gel.reading.KeptBands;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.PairReading;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The bands of one pair, each to keep or to strike, and what the kept ones amount to. */
final class GelBands {

  private GelBands() {}

  /** What a band is called: the lane's letter and its number from above. */
  static String name(boolean isCsf, int band) {
    return (isCsf ? "C" : "S") + (band + 1);
  }

  /** A field for every band of both lanes. */
  static List<Element> fields(KeptBands bands) {
    return List.of(fields(bands, bands.csf(), true), fields(bands, bands.serum(), false));
  }

  private static Element fields(KeptBands bands, LaneReading lane, boolean isCsf) {
    List<Node> rows = new ArrayList<>();
    for (int i = 0; i < lane.bands().size(); i++) {
      rows.add(field(bands, lane, i, isCsf));
    }
    String legend =
        (isCsf ? "Spinal fluid" : "Serum")
            + ", lane "
            + (lane.index() + 1)
            + " ("
            + lane.quality().word()
            + ")";
    Node none = rows.isEmpty() ? Html.note("empty", "No band was read.") : Html.nothing();
    return Element.of("fieldset", Element.of("legend", legend), none).with(rows);
  }

  private static Element field(KeptBands bands, LaneReading lane, int band, boolean isCsf) {
    BandMark mark = lane.bands().get(band);
    String key = GelEdit.key(lane.index(), band);
    String why = "why-" + key;
    Element box =
        Element.of("input")
            .with("type", "checkbox")
            .with("name", "keep")
            .with("value", key)
            .with("id", "keep-" + key)
            .with("aria-describedby", why);
    String counterpart =
        mark.matched().isPresent()
            ? "also " + (isCsf ? "in serum, " : "in the fluid, ") + name(!isCsf, at(mark.matched()))
            : "in the " + (isCsf ? "fluid" : "serum") + " only";
    return division(
        "band",
        bands.isKept(lane, band) ? box.with("checked", "checked") : box,
        Element.of("label", "Keep " + name(isCsf, band) + ": " + counterpart)
            .with("for", "keep-" + key),
        Element.of("p", Chances.of(mark.probability()) + " to be real; " + mark.reason())
            .with("id", why)
            .with("class", "why"));
  }

  private static int at(OptionalInt matched) {
    return matched.orElseThrow();
  }

  /** What the kept bands amount to, beside what was read. */
  static Node counts(GelCase gel, GelEdit edit, Facts facts) {
    return gel.bandsKept(edit)
        .<Node>map(
            bands ->
                Fragment.of(
                    Element.of("h2", "As you keep them"),
                    table(bands.counts(), gel.countsRead()),
                    paragraph(sentence(bands.counts(), edit, facts)),
                    gel.isAsRead(edit)
                        ? Html.nothing()
                        : Html.note(
                            "quiet",
                            "When you confirm, your counts stand; what was read is kept.")))
        .orElseGet(() -> Html.note("empty", "Nothing to count: a lane of the pair is missing."));
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
    return reading.pattern().map(GelBands::words).orElse("No pattern follows")
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

  /** How likely each pattern is, as the program read the pair. */
  static Node patterns(PairReading.Counts counts) {
    List<List<Node>> rows = new ArrayList<>();
    for (BandPattern pattern : BandPattern.values()) {
      double chance = counts.probabilityOfPattern().get(pattern.number() - 1);
      rows.add(List.of(Html.text(words(pattern)), Html.text(Chances.of(Math.clamp(chance, 0, 1)))));
    }
    return Html.section(
        "patterns",
        "How likely each pattern is",
        Html.table(
            "As the program read it; keeping or striking does not change this",
            List.of("Pattern", "Chance"),
            rows),
        paragraph(
            "Bands in the fluid only at or over the cut-off: "
                + Chances.of(Math.clamp(counts.probabilityPositive(), 0, 1))
                + "."));
  }
}
