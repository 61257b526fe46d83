package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;

import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.Identity;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.interpretation.Caution;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;

/** What stands around every screen of a case: its head, and its steps beside what is open. */
public final class CaseFrame {

  private final CaseContext context;
  private final Undo undo;

  /** The frame of the cases on a context. */
  public CaseFrame(CaseContext context) {
    this.context = context;
    this.undo = new Undo(context);
  }

  /**
   * A screen of a case.
   *
   * @param here the word of what is open
   */
  public String toHtml(PageRequest visit, OpenCase open, String here, Node... content) {
    CaseStatus status = context.status(open);
    Element whole =
        division(
            "open", onPaper(open), invented(open), undo(visit, open, here), Fragment.of(content));
    return context
        .frame()
        .toHtml(
            visit,
            open.name(),
            new CaseHead(visit, open, status).toElement(),
            here.isEmpty()
                ? whole
                : division("case", new Journey(visit, open, status).beside(here), whole));
  }

  /** A change is undone where saving leads to. */
  private Node undo(PageRequest visit, OpenCase open, String here) {
    boolean isWhereItWasSaved = here.isEmpty() || here.equals(open.version().step());
    return isWhereItWasSaved || here.equals("gel") ? undo.toNode(visit, open) : Html.nothing();
  }

  /** What a sheet of paper must say, where the rest of the page is not printed. */
  private static Node onPaper(OpenCase open) {
    return Html.note(
        "on-paper",
        "Case %s, version %d · %s"
            .formatted(open.name(), open.version().number(), Identity.of(open.file()).toText()));
  }

  private Node invented(OpenCase open) {
    return open.workup().remarks().isInvented() && !context.frame().isInvented()
        ? Html.note("invented", Caution.INVENTED.text())
        : Html.nothing();
  }
}
