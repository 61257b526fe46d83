package cistern.clinic.worklist;

import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.account.Permission;
import cistern.clinic.casework.CallForm;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.form.CaseStep;
import cistern.clinic.status.Duty;
import cistern.clinic.status.Summary;
import cistern.clinic.status.Waiting;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.stream.Collectors;

/**
 * One person's row of the day.
 *
 * @param visit who looks
 * @param context of cases
 * @param summary of the case
 * @param first what comes first
 */
record TimetableRow(PageRequest visit, CaseContext context, Summary summary, Waiting first) {

  Element toElement() {
    return Element.of(
            "tr",
            Element.of("td", when()).with("class", "when"),
            Element.of("td", who()).with("class", "person"),
            Element.of("td", what()).with("class", "what"),
            Element.of("td", act()).with("class", "act"))
        .with("class", first.duty() == Duty.EMERGENCY ? "alarm" : "waits");
  }

  private Node when() {
    return first.dueAt().isEmpty() ? Html.text("now") : Html.text(context.shortTime(first.dueAt()));
  }

  private Node who() {
    return Fragment.of(
        CaseList.link(summary), Element.of("span", summary.person()).with("class", "quiet"));
  }

  private Node what() {
    String also =
        summary.waiting().stream()
            .filter(w -> !w.equals(first))
            .map(w -> w.duty().one())
            .collect(Collectors.joining(", "));
    return Fragment.of(
        Element.of("span", first.words()),
        also.isEmpty()
            ? nothing()
            : Element.of("span", "Also: " + also + ".").with("class", "quiet"));
  }

  private String path() {
    return "/cases/" + summary.caseId();
  }

  private Node act() {
    return switch (first.duty()) {
      case EMERGENCY -> link(path(), "Open and act");
      case HEADACHE_CALL ->
          visit.isAllowed(Permission.CARE_AFTER)
              ? CallForm.toElement(visit, summary.caseId(), summary.name())
              : nothing();
      case PUNCTURE -> step(CaseStep.DRAW, "Note the draw");
      case SERUM, OVERDUE, DUE -> step(CaseStep.RESULTS, "Enter results");
      case GEL ->
          visit.isAllowed(Permission.ENTER_RESULTS) ? link(path() + "/gel", "Confirm") : nothing();
      case SIGN ->
          visit.isAllowed(Permission.READ_REPORT)
              ? link(path() + "/report", "Read and sign")
              : nothing();
    };
  }

  private Node step(CaseStep step, String words) {
    return visit.isAllowed(step.permission()) ? link(path() + "/" + step.word(), words) : nothing();
  }
}
