package cistern.report.page;

import cistern.criteria.Checked;
import cistern.criteria.CriteriaResult;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.wording.CriteriaWords;
import cistern.weighing.Weighed;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Both editions of the criteria, each with what would settle it and its checklist. */
final class CriteriaBlock {

  private CriteriaBlock() {}

  static Node of(Sheet sheet) {
    if (!sheet.interpretation().workup().clinical().isEvidenceStated()) {
      return Fragment.of();
    }
    Weighed weighed = sheet.interpretation().weighed();
    List<Node> lines = new ArrayList<>();
    weighed.criteria().forEach(r -> lines.add(edition(sheet, r)));
    Stream.concat(
            weighed.difference().stream(),
            Stream.of(CriteriaWords.puncture(weighed.puncture().effects())))
        .forEach(text -> lines.add(Html.paragraph(text)));
    weighed
        .prompts()
        .forEach(
            p -> lines.add(Html.paragraph(p.text() + " ").with(sheet.sources().mark(p.grounds()))));
    return Html.section("criteria", "Criteria, each edition by itself").with(lines);
  }

  private static Node edition(Sheet sheet, CriteriaResult result) {
    Element line =
        Html.paragraph(CriteriaWords.of(result) + " ").with(sheet.sources().mark(result.grounds()));
    if (sheet.isPaper() || result.checklist().isEmpty()) {
      return line;
    }
    return Fragment.of(
        line,
        Element.of(
            "details",
            Element.of("summary", "Checklist of " + result.edition()),
            Html.list(result.checklist(), CriteriaBlock::checked)));
  }

  private static Node checked(Checked checked) {
    return new Text(
        "%s: %s%s"
            .formatted(
                checked.item().term(),
                checked.answer().word(),
                checked.evidence().equals(checked.answer().word())
                    ? ""
                    : " (" + checked.evidence() + ")"));
  }
}
