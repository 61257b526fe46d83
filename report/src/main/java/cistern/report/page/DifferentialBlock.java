package cistern.report.page;

import cistern.differential.Argument;
import cistern.differential.DifferentialResult;
import cistern.differential.Disease;
import cistern.differential.Posterior;
import cistern.differential.PracticeCompared;
import cistern.redflag.RedFlag;
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

/** What else it could be: red flags, numbers, weights, and what would tell most. */
final class DifferentialBlock {

  private static final int MOST_NEXT = 5;

  private DifferentialBlock() {}

  static Node of(Sheet sheet) {
    Weighed weighed = sheet.interpretation().weighed();
    return Fragment.of(
        flags(sheet, weighed.flags()),
        diseases(sheet, weighed.differential()),
        next(weighed.next()));
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
    if (shown.isEmpty()) {
      parts.add(
          Html.paragraph(
              "No probability before the puncture was stated, so none is given after it; the"
                  + " figure shows only how much each finding moves the odds."));
    } else {
      parts.add(Html.list(shown, p -> new Text(DifferentialWords.of(p))));
    }
    WeightBars.toFigure("weights", result.weightsOfMs())
        .map(figure -> Html.division("weights", DiagramsBlock.figure(sheet, figure)))
        .ifPresent(parts::add);
    if (!sheet.isPaper()) {
      parts.add(unfolding("Diseases with too few counts for a number", arguments(result)));
      parts.add(unfolding("What the trade says without a source", practice(result)));
      parts.add(unfolding("What was assumed", Html.list(result.assumptions(), Text::new)));
    }
    return Html.section("differential", "What else it could be").with(parts);
  }

  private static Node unfolding(String title, Node content) {
    return Element.of("details", Element.of("summary", title), content);
  }

  private static Node arguments(DifferentialResult result) {
    return Html.list(result.arguments(), (Argument a) -> new Text(DifferentialWords.of(a)));
  }

  private static Node practice(DifferentialResult result) {
    return Html.list(result.practice(), (PracticeCompared p) -> new Text(p.text()));
  }

  private static Node next(List<NextItem> items) {
    if (items.isEmpty()) {
      return Fragment.of();
    }
    return Html.section(
        "next",
        "What would tell most for its burden",
        Html.list(
            items.subList(0, Math.min(MOST_NEXT, items.size())),
            i -> new Text(DifferentialWords.of(i))));
  }
}
