package cistern.report.page;

import cistern.differential.Argument;
import cistern.differential.CountTable;
import cistern.differential.DifferentialResult;
import cistern.differential.PracticeCompared;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.wording.CountWords;
import cistern.report.wording.DifferentialWords;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;

/**
 * What the differential rests on: diseases without a number, the counts, what the trade says, and
 * every assumption. It unfolds on a screen and stands at the end on paper.
 */
final class CountsBlock {

  private CountsBlock() {}

  /** Each part under its title; a part without content is left out. */
  static SequencedMap<String, Node> parts(Sheet sheet) {
    DifferentialResult result = sheet.interpretation().weighed().differential();
    SequencedMap<String, Node> parts = new LinkedHashMap<>();
    if (result.weights().isEmpty()) {
      return parts;
    }
    if (!result.arguments().isEmpty()) {
      parts.put(
          "Diseases with too few counts for a number",
          Html.list(result.arguments(), (Argument a) -> new Text(DifferentialWords.of(a))));
    }
    if (!sheet.isPaper()) {
      parts.put("The counts behind each disease", counts(result.counts()));
    }
    if (!result.practice().isEmpty()) {
      parts.put(
          "What the trade says without a source",
          Html.list(result.practice(), (PracticeCompared p) -> new Text(p.text())));
    }
    parts.put("What was assumed", Html.list(result.assumptions(), Text::new));
    return parts;
  }

  /** The same at the end of a paper. */
  static Node onPaper(Sheet sheet) {
    if (!sheet.isPaper()) {
      return Fragment.of();
    }
    List<Node> sections =
        parts(sheet).entrySet().stream()
            .map(
                part ->
                    (Node) Html.division("small", Element.of("h2", part.getKey()), part.getValue()))
            .toList();
    return new Fragment(sections);
  }

  private static Node counts(List<CountTable> tables) {
    Element head =
        Element.of("tr")
            .with(
                CountWords.HEADINGS.stream()
                    .map(h -> Element.of("th", h).with("scope", "col"))
                    .toList());
    List<Element> rows =
        tables.stream().flatMap(t -> CountWords.rows(t).stream()).map(CountsBlock::row).toList();
    return Html.division(
        "scroll",
        Element.of("table", Element.of("caption", CountWords.CAPTION))
            .with("class", "numbers")
            .with(Element.of("thead", head), Element.of("tbody").with(rows)));
  }

  private static Element row(List<String> cells) {
    return Element.of("tr", Element.of("th", cells.getFirst()).with("scope", "row"))
        .with(cells.stream().skip(1).map(c -> Element.of("td", c)).toList());
  }
}
