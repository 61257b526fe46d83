package cistern.clinic.casework.gel;

import static cistern.clinic.web.Html.paragraph;

import cistern.bands.BandPattern;
import cistern.clinic.web.Html;
import cistern.fact.Facts;
import cistern.finding.Chances;
import cistern.gel.pairing.KeptChances;
import cistern.gel.reading.KeptBands;
import cistern.gel.reading.PairReading;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * How likely each pattern of a pair is with what a person made of its bands.
 *
 * @param read as the program gave it
 * @param kept as it stands with the edit
 * @param isEdited whether a band was struck or drawn, or a ladder judged otherwise
 * @param cutOff in force
 */
record PatternChances(KeptChances read, KeptChances kept, boolean isEdited, int cutOff) {

  private static final String ID = "pattern-chances";

  /** Of a pair whose lanes were found. */
  static Optional<PatternChances> of(GelCase gel, GelEdit edit, Facts facts) {
    int cutOff = (int) facts.number("bands.cut-off");
    return gel.pair()
        .flatMap(PairReading::counts)
        .flatMap(counts -> gel.bandsKept(edit).map(bands -> of(counts, bands, gel, edit, cutOff)));
  }

  private static PatternChances of(
      PairReading.Counts counts, EditedPair bands, GelCase gel, GelEdit edit, int cutOff) {
    KeptBands before = new KeptBands(bands.read().csf(), bands.read().serum(), Set.of());
    boolean isOwnLadder = edit.isLadder() != gel.isReadAsLadder();
    OptionalDouble ladder =
        isOwnLadder ? OptionalDouble.of(edit.isLadder() ? 1 : 0) : OptionalDouble.empty();
    return new PatternChances(
        KeptChances.of(counts, before, before, OptionalDouble.empty(), cutOff),
        KeptChances.of(counts, before, bands.bands(), ladder, cutOff),
        isOwnLadder || !bands.bands().equals(before),
        cutOff);
  }

  /** The section of a page; what is in it follows an edit at once. */
  Node toNode() {
    return Html.section(
        "patterns", "How likely each pattern is", Element.of("div", content()).with("id", ID));
  }

  /** What takes the place of the section's content after an edit. */
  Node toFollow() {
    return Html.division("live", Element.of("div", content()).with("data-at", ID));
  }

  private Node content() {
    List<List<Node>> rows = new ArrayList<>();
    for (BandPattern pattern : BandPattern.values()) {
      List<Node> row = new ArrayList<>();
      row.add(Html.text(BandChoices.words(pattern)));
      if (isEdited) {
        row.add(Html.text(words(kept, pattern)));
      }
      row.add(Html.text(words(read, pattern)));
      rows.add(row);
    }
    return Fragment.of(
        Html.table(
            isEdited
                ? "A band that was struck counts as none and one that was drawn as certain; of every"
                    + " other the chance stays the program's"
                : "As the program read it",
            isEdited
                ? List.of("Pattern", "Chance as you keep the bands", "As the program read it")
                : List.of("Pattern", "Chance"),
            rows),
        paragraph(
            "Bands in the fluid only at or over the cut-off of "
                + cutOff
                + ": "
                + many(kept)
                + (isEdited ? "; as the program read it, " + many(read) : "")
                + "."));
  }

  private static String words(KeptChances chances, BandPattern pattern) {
    return Chances.of(Math.clamp(chances.patterns().get(pattern.number() - 1), 0, 1));
  }

  private String many(KeptChances chances) {
    return Chances.of(chances.csfOnly().atLeast(cutOff));
  }

  /** The chance that decides, in one line beside the counts. */
  Element toLine() {
    return paragraph(
        cutOff
            + " or more only in the fluid: "
            + many(kept)
            + (isEdited ? ", as you keep them." : "."));
  }
}
