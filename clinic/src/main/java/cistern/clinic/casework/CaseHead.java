package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.account.Permission;
import cistern.clinic.form.CaseStep;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.Duty;
import cistern.clinic.status.GelDispute;
import cistern.clinic.status.Identity;
import cistern.clinic.status.OpenCase;
import cistern.clinic.status.Waiting;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.interpretation.Interpretation;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.statement.Statement;
import cistern.statement.WeakestLink;
import cistern.urgent.Urgency;
import cistern.urgent.Urgent;
import java.util.ArrayList;
import java.util.List;

/**
 * What stands at the top of every screen of a case: whose it is, the emergency or the answer, what
 * it hangs on, and what to do next.
 */
final class CaseHead {

  private final PageRequest visit;
  private final OpenCase open;
  private final CaseStatus status;

  CaseHead(PageRequest visit, OpenCase open, CaseStatus status) {
    this.visit = visit;
    this.open = open;
    this.status = status;
  }

  /** The whole of it. */
  Element toElement() {
    return Element.of("section", who(), emergencies(), conclusion())
        .with("class", status.emergencies().isEmpty() ? "head" : "head alarm")
        .with("id", "head")
        .with("aria-label", "Whose case it is and what it says");
  }

  private Element who() {
    String path = "/cases/" + open.version().caseId();
    return Element.of(
            "p",
            Element.of("strong", link(path, open.name())),
            Element.of("span", Identity.of(open.file()).toText()))
        .with("class", "whose");
  }

  private Node emergencies() {
    List<Urgency> all = status.emergencies();
    if (all.isEmpty()) {
      return nothing();
    }
    List<Element> items = new ArrayList<>();
    for (Urgency urgency : all) {
      items.add(
          Element.of(
              "li",
              Element.of("strong", urgency.words().say()),
              Html.paragraph(urgency.words().act()),
              visit.isAllowed(Permission.WORK_UP) ? closing(urgency) : nothing()));
    }
    return division("emergency", Element.of("ul").with(items)).with("role", "alert");
  }

  /** Closing needs a reason; the name and the time are those of whoever presses. */
  private Element closing(Urgency urgency) {
    String reason = "reason-" + urgency.code();
    Element input =
        Html.input("reason", "")
            .with("id", reason)
            .with("required", "required")
            .with("autocomplete", "off")
            .with("maxlength", Integer.toString(Setting.REASON_MOST.number()));
    return Element.of(
        "details",
        Element.of("summary", "It has been acted on: close it"),
        visit
            .form("/cases/" + open.version().caseId() + "/answer")
            .with("class", "closing")
            .with(
                hidden("to", urgency.code()),
                Element.of("label", "What was done, and why nothing more is needed here")
                    .with("for", reason),
                input,
                Html.button("Close as " + visit.account().fullName())));
  }

  private Node conclusion() {
    if (!visit.isAllowed(Permission.READ_REPORT)) {
      return next();
    }
    List<Statement> said = open.interpretation().statements();
    List<Node> lines = new ArrayList<>();
    lines.add(division("says", says(open.interpretation())).with("id", "head-says"));
    said.stream()
        .filter(WeakestLink.class::isInstance)
        .map(s -> Html.note("weak", s.text()))
        .forEach(lines::add);
    GelDispute.of(open.interpretation().bands())
        .map(d -> Html.note("weak", d.text()))
        .ifPresent(lines::add);
    lines.add(next());
    return division("conclusion").with(lines);
  }

  /** The answer; where an emergency is open it is said above, or here while it is typed only. */
  private static Node says(Interpretation said) {
    return said.statements().isEmpty() || said.alerts().urgent().isOpen()
        ? nothing()
        : Html.note("answer", said.statements().getFirst().text());
  }

  /**
   * The answer as it is typed, or the first emergency of it that does not stand above already.
   *
   * @param saved what the case says as it was saved
   */
  static Node live(Interpretation said, Interpretation saved, boolean mayRead) {
    Urgent onlyTyped = said.alerts().urgent().without(saved.alerts().urgent().open());
    Node words =
        onlyTyped.open().stream()
            .findFirst()
            .<Node>map(u -> Html.note("answer typed-alarm", u.words().say()))
            .orElseGet(() -> says(said));
    return mayRead ? division("", words).with("data-at", "head-says") : nothing();
  }

  /** The first thing that waits, as a way to where it is done. */
  private Node next() {
    return status.duties().stream()
        .filter(d -> d != Duty.EMERGENCY)
        .findFirst()
        .<Node>map(
            d -> Html.note("next", "Next: ").with(link(place(d), words(d))).withText(whether(d)))
        .orElseGet(Html::nothing);
  }

  /** Whether to go on to a puncture: it is read before the puncture is. */
  private String whether(Duty duty) {
    return duty == Duty.PUNCTURE ? ". " + Waiting.of(duty, open, status).words() + "." : "";
  }

  private String words(Duty duty) {
    return switch (duty) {
      case EMERGENCY -> "act on the emergency";
      case HEADACHE_CALL -> "call, and note how the person is";
      case PUNCTURE -> "the puncture";
      case SERUM -> "serum of the same puncture";
      case OVERDUE -> "results that are overdue";
      case DUE -> "results that are due";
      case GEL -> "confirm the bands";
      case SIGN -> "read and sign";
    };
  }

  private String place(Duty duty) {
    String path = "/cases/" + open.version().caseId();
    CaseStep step =
        switch (duty) {
          case HEADACHE_CALL -> CaseStep.AFTER;
          case PUNCTURE -> CaseStep.DRAW;
          case EMERGENCY, SERUM, OVERDUE, DUE, GEL, SIGN -> CaseStep.RESULTS;
        };
    return switch (duty) {
      case GEL -> visit.isAllowed(Permission.ENTER_RESULTS) ? path + "/gel" : path;
      case SIGN -> visit.isAllowed(Permission.READ_REPORT) ? path + "/report" : path;
      case EMERGENCY -> path;
      case HEADACHE_CALL, PUNCTURE, SERUM, OVERDUE, DUE ->
          visit.isAllowed(step.permission()) ? path + "/" + step.word() : path;
    };
  }
}
