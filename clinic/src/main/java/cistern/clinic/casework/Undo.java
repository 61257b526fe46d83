package cistern.clinic.casework;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Saving;
import cistern.clinic.form.CaseStep;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.Optional;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * Undoing a person's own last change: the version before it becomes the newest, with a reason; the
 * undone one stays readable, and undoing may be undone.
 */
final class Undo {

  private static final String UNDONE = "undone: ";

  /** The longest reason, in characters: it stands in a row of a table. */
  private static final int LONGEST = Setting.REASON_MOST.number();

  private final CaseContext context;

  Undo(CaseContext context) {
    this.context = context;
  }

  /** What to press after saving; nothing where the last change is somebody else's. */
  Node toNode(PageRequest visit, OpenCase open) {
    CaseVersion last = open.version();
    if (!isOwn(visit, last)) {
      return Html.nothing();
    }
    Element reason =
        Html.field(
            "Why it is undone",
            Html.input("reason", "")
                .with("autocomplete", "off")
                .with("maxlength", Integer.toString(LONGEST)));
    String saved =
        "Saved: %s, version %d, %s."
            .formatted(words(last.step()), last.number(), context.time(last.at()));
    return visit
        .form("/cases/" + last.caseId() + "/undo")
        .with("class", "undo")
        .with(
            Element.of("span", saved),
            Html.hidden("base", Long.toString(last.number())),
            Html.button("Undo").with("class", "plain"),
            Element.of("details", Element.of("summary", "with a reason"), reason));
  }

  private static boolean isOwn(PageRequest visit, CaseVersion last) {
    return last.number() > 1 && last.account().equals(visit.account().id());
  }

  /** A change as people read it. */
  static String words(String step) {
    return CaseStep.parse(step).map(CaseStep::title).orElse(step);
  }

  ServerResponse answer(PageRequest visit) {
    Optional<CaseVersion> last = context.cases().read(visit.path("id"), visit.account().id());
    Optional<CaseVersion> before =
        last.filter(v -> isOwn(visit, v))
            .filter(v -> visit.field("base").equals(Long.toString(v.number())))
            .flatMap(v -> context.cases().version(v.caseId(), v.number() - 1));
    if (last.isEmpty()) {
      return context.troubles().missing(visit);
    }
    CaseVersion now = last.get();
    if (before.isEmpty() || !isSaved(visit, now, before.get())) {
      return context.troubles().changed(visit, "/cases/" + now.caseId());
    }
    return Responses.see("/cases/" + now.caseId());
  }

  private boolean isSaved(PageRequest visit, CaseVersion now, CaseVersion before) {
    String all = visit.field("reason");
    String reason = all.substring(0, Math.min(all.length(), LONGEST));
    String step = UNDONE + words(now.step()) + (reason.isEmpty() ? "" : " (" + reason + ")");
    Change change = new Change(now.number(), step, before.workup(), visit.account().id());
    return context.cases().save(now.caseId(), change) instanceof Saving.Kept;
  }
}
