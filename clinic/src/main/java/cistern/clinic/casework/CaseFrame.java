package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.link;

import cistern.clinic.account.Permission;
import cistern.clinic.form.CaseStep;
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.Identity;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.interpretation.Caution;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;

/** The journey of a case as a list of steps beside what is open. */
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
    return context
        .frame()
        .toHtml(
            visit,
            open.name(),
            new CaseHead(visit, open, status).toElement(),
            division(
                "case",
                journey(visit, open, status, here),
                division(
                    "open",
                    onPaper(open),
                    invented(open),
                    undo(visit, open, here),
                    Fragment.of(content))));
  }

  /** A change is undone where saving leads to. */
  private Node undo(PageRequest visit, OpenCase open, String here) {
    return here.isEmpty() || here.equals("gel") ? undo.toNode(visit, open) : Html.nothing();
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

  private static Element journey(PageRequest visit, OpenCase open, CaseStatus status, String here) {
    String path = "/cases/" + open.version().caseId();
    List<Element> steps = new ArrayList<>();
    steps.add(step(path, "Where it stands", status.signing(), here.isEmpty()));
    for (CaseStep step : CaseStep.values()) {
      if (visit.isAllowed(step.permission())) {
        steps.add(
            step(
                path + "/" + step.word(),
                step.title(),
                status.words(step),
                here.equals(step.word())));
      } else {
        steps.add(Element.of("li", step.title()).with(small(status.words(step))));
      }
      if (step == CaseStep.BANDS && visit.isAllowed(Permission.ENTER_RESULTS)) {
        steps.add(step(path + "/gel", "Gel", status.gel(), here.equals("gel")));
      }
    }
    if (visit.isAllowed(Permission.READ_REPORT)) {
      steps.add(step(path + "/tubes", "Plan to print", "", here.equals("tubes")));
      steps.add(step(path + "/labels", "Tubes and labels", "", here.equals("labels")));
      steps.add(step(path + "/says", "What it says", "", here.equals("says")));
      steps.add(step(path + "/report", "Report", status.signing(), here.equals("report")));
      steps.add(step(path + "/compare", "Earlier punctures", "", here.equals("compare")));
    }
    return Element.of("nav", Element.of("ol").with(steps))
        .with("class", "journey")
        .with("aria-label", "Steps of the case");
  }

  private static Element step(String path, String title, String words, boolean isHere) {
    Element link = link(path, title);
    return Element.of("li", isHere ? link.with("aria-current", "page") : link).with(small(words));
  }

  private static Element small(String words) {
    return Element.of("span", words).with("class", "state");
  }
}
