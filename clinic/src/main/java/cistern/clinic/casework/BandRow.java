package cistern.clinic.casework;

import cistern.clinic.account.Permission;
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.GelDispute;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** The row of the bands: counts, the verdict, and the gel in which they were counted. */
final class BandRow {

  private final PageRequest visit;
  private final OpenCase open;
  private final CaseStatus status;
  private final Unfolded unfolded;

  BandRow(PageRequest visit, OpenCase open, CaseStatus status, Unfolded unfolded) {
    this.visit = visit;
    this.open = open;
    this.status = status;
    this.unfolded = unfolded;
  }

  Element toElement(Function<String, Node> field) {
    List<Node> cells = new ArrayList<>();
    cells.add(Element.of("th", name()).with("scope", "row").with("id", "name-" + Unfolded.BANDS));
    cells.add(
        Element.of("td", small("in CSF only"), field.apply("bands.csfOnly")).with("class", "csf"));
    cells.add(
        Element.of(
                "td",
                small("in both"),
                field.apply("bands.shared"),
                small("in serum only"),
                field.apply("bands.serumOnly"))
            .with("class", "blood"));
    if (visit.isAllowed(Permission.READ_REPORT)) {
      cells.add(Element.of("td", gel()).with("class", "against"));
      cells.add(
          Element.of("td", unfolded.bandVerdict())
              .with("class", "verdict")
              .with("id", "verdict-" + Unfolded.BANDS));
    }
    return Element.of("tr").with("id", "row-bands").with("class", "bands-row").with(cells);
  }

  private Node name() {
    return visit.isAllowed(Permission.READ_REPORT)
        ? unfolded.bandName()
        : Html.text(Unfolded.BAND_TERM);
  }

  private static Element small(String words) {
    return Element.of("span", words).with("class", "quiet");
  }

  private Node gel() {
    String path = "/cases/" + open.version().caseId() + "/gel";
    Node words =
        Html.note(
            "quiet",
            GelDispute.of(open.interpretation().bands())
                .map(GelDispute::text)
                .orElseGet(() -> "Gel: " + status.gel() + "."));
    return visit.isAllowed(Permission.ENTER_RESULTS)
        ? Fragment.of(words, Html.link(path, "Open the gel"))
        : words;
  }
}
