package cistern.clinic.casework;

import static cistern.clinic.web.Html.link;

import cistern.clinic.account.Permission;
import cistern.clinic.form.CaseStep;
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.Duty;
import cistern.clinic.status.OpenCase;
import cistern.clinic.status.Waiting;
import cistern.clinic.web.PageRequest;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The steps of a case and its papers, each with where it stands: rows of the case's own page, and
 * beside what is open on every other.
 */
final class Journey {

  private static final String STATE = "state";

  private final PageRequest visit;
  private final OpenCase open;
  private final CaseStatus status;
  private final String path;

  Journey(PageRequest visit, OpenCase open, CaseStatus status) {
    this.visit = visit;
    this.open = open;
    this.status = status;
    this.path = "/cases/" + open.version().caseId();
  }

  /**
   * The steps beside a screen.
   *
   * @param here the word of the screen
   */
  Element beside(String here) {
    return navigation("journey", here, Map.of());
  }

  /**
   * The steps as rows of the case's page.
   *
   * @param changes who changed a step last and when, by its word
   */
  Element rows(Map<String, String> changes) {
    return navigation("journey rows", "", changes);
  }

  private Element navigation(String kind, String here, Map<String, String> changes) {
    boolean isRows = here.isEmpty();
    List<Element> steps = new ArrayList<>();
    steps.add(step("", "Where it stands", status.signing(), here).with("class", "whole-case"));
    for (CaseStep step : CaseStep.values()) {
      Element row =
          visit.isAllowed(step.permission())
              ? step(step.word(), step.title(), words(step, isRows), here)
              : Element.of(
                  "li", Element.of("span", step.title()), small(words(step, isRows), STATE));
      steps.add(changed(row, changes.getOrDefault(step.word(), "")));
      if (step == CaseStep.BANDS && visit.isAllowed(Permission.ENTER_RESULTS)) {
        steps.add(changed(step("gel", "Gel", status.gel(), here), changes.getOrDefault("gel", "")));
      }
    }
    if (visit.isAllowed(Permission.READ_REPORT)) {
      steps.add(
          changed(
              step("report", "Report", status.signing(), here),
              changes.getOrDefault("report", "")));
      steps.add(paper("says", "What it says", here));
      steps.add(paper("tubes", "Plan to print", here));
      steps.add(paper("labels", "Tubes and labels", here));
      steps.add(paper("compare", "Earlier punctures", here));
    }
    return Element.of("nav", Element.of("ol").with(steps))
        .with("class", kind)
        .with("aria-label", "Steps of the case");
  }

  /** Where a step stands; in a row, of a puncture that is planned also whether to go on to it. */
  private String words(CaseStep step, boolean isRow) {
    boolean isToGo = isRow && step == CaseStep.PLAN && status.duties().contains(Duty.PUNCTURE);
    return status.words(step)
        + (isToGo ? ". " + Waiting.of(Duty.PUNCTURE, open, status).words() : "");
  }

  private Element step(String to, String title, String words, String here) {
    Element link = link(to.isEmpty() ? path : path + "/" + to, title);
    return Element.of(
        "li", here.equals(to) ? link.with("aria-current", "page") : link, small(words, STATE));
  }

  private Element paper(String to, String title, String here) {
    return step(to, title, "", here).with("class", "paper");
  }

  private static Element changed(Element row, String words) {
    return words.isEmpty() ? row : row.with(small(words, "changed"));
  }

  private static Element small(String words, String kind) {
    return Element.of("span", words).with("class", kind);
  }
}
