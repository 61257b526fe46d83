package cistern.report.page;

import cistern.differential.DifferentialResult;
import cistern.differential.Disease;
import cistern.differential.Posterior;
import cistern.redflag.RedFlag;
import cistern.report.figure.Figure;
import cistern.report.figure.WeightBars;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.wording.DifferentialWords;
import cistern.report.wording.OddsWords;
import cistern.weighing.NextItem;
import cistern.weighing.Weighed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What else it could be: red flags, numbers, weights, and what would tell most. */
final class DifferentialBlock {

  private static final int MOST_NEXT = 5;
  private static final String NO_PRIOR =
      "No probability before the puncture was stated, so none is given after it: only how much each"
          + " finding moves the odds.";

  private DifferentialBlock() {}

  /** What leads away from MS, before everything that only moves it. */
  static Node flags(Sheet sheet) {
    return flags(sheet, sheet.interpretation().weighed().flags());
  }

  /** Numbers, weights and what would tell most. */
  static Node of(Sheet sheet) {
    Weighed weighed = sheet.interpretation().weighed();
    return Fragment.of(diseases(sheet, weighed.differential()), next(weighed.next()));
  }

  /**
   * Whether it stands after the diagrams: on paper, where nothing was stated that the criteria or
   * the differential ask for, the first page belongs to the measured values.
   */
  static boolean isLate(Sheet sheet) {
    return sheet.isPaper() && !sheet.interpretation().workup().clinical().isEvidenceStated();
  }

  private static Node flags(Sheet sheet, List<RedFlag> flags) {
    if (flags.isEmpty()) {
      return Fragment.of();
    }
    return Html.section(
        "flags",
        "Less usual in MS: to think of, not to conclude",
        Html.list(
            flags,
            f ->
                Fragment.of(
                    new Text(DifferentialWords.of(f) + " "), sheet.sources().mark(f.grounds()))));
  }

  private static Node diseases(Sheet sheet, DifferentialResult result) {
    if (result.weights().isEmpty()) {
      return Fragment.of();
    }
    List<Node> parts = new ArrayList<>();
    List<Posterior> shown =
        result.posteriors().stream()
            .filter(p -> p.probability() >= OddsWords.LEAST_SHOWN || p.disease() == Disease.MS)
            .toList();
    parts.add(
        shown.isEmpty()
            ? Html.paragraph(NO_PRIOR)
            : Html.list(shown, p -> new Text(DifferentialWords.of(p))));
    if (!isLate(sheet)) {
      bars(sheet)
          .map(figure -> Html.division("weights", DiagramsBlock.figure(sheet, figure)))
          .ifPresent(parts::addFirst);
    }
    if (!sheet.isPaper()) {
      CountsBlock.parts(sheet)
          .forEach(
              (title, content) ->
                  parts.add(Element.of("details", Element.of("summary", title), content)));
    }
    return Html.section("differential", "What else it could be").with(parts);
  }

  /** What each finding weighs, drawn; nothing where none moved anything. */
  static Optional<Figure> bars(Sheet sheet) {
    return WeightBars.toFigure(
        "weights", sheet.interpretation().weighed().differential().weightsOfMs());
  }

  private static Node next(List<NextItem> items) {
    if (items.isEmpty()) {
      return Fragment.of();
    }
    return Html.section(
        "telling",
        "What would tell most for its burden",
        Html.list(
            items.subList(0, Math.min(MOST_NEXT, items.size())),
            i -> new Text(DifferentialWords.of(i))));
  }
}
