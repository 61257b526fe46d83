package cistern.report.page;

import cistern.interpretation.Interpretation;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.List;

/** The interpretation for the clinician: the answer, then everything it rests on. */
final class ClinicianPage {

  private ClinicianPage() {}

  static Element of(Sheet sheet) {
    Interpretation interpretation = sheet.interpretation();
    boolean isLate = DifferentialBlock.isLate(sheet);
    return Element.of("main")
        .with("class", "clinician")
        .with(
            List.<Node>of(
                EvidenceBlocks.banner(interpretation),
                AnswerBlock.head(interpretation),
                AnswerBlock.statements(interpretation.statements()),
                EvidenceBlocks.bands(sheet),
                ValuesBlock.of(sheet),
                CriteriaBlock.of(sheet),
                DifferentialBlock.flags(sheet),
                isLate ? Fragment.of() : DifferentialBlock.of(sheet),
                EvidenceBlocks.conflicts(interpretation),
                EvidenceBlocks.problems(interpretation),
                EvidenceBlocks.cautions(interpretation),
                EvidenceBlocks.versions(sheet),
                DiagramsBlock.of(sheet),
                isLate ? DifferentialBlock.of(sheet) : Fragment.of(),
                Html.section("sources", "Sources", sheet.sources().toList()),
                CountsBlock.onPaper(sheet),
                DiagramsBlock.tables(sheet)));
  }
}
