package cistern.clinic.worklist;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.note;

import cistern.clinic.account.Permission;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.sent.SentIn;
import cistern.clinic.sent.SentPage;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.Identity;
import cistern.clinic.status.Summary;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.JsonText;
import cistern.exchange.workup.WorkupReading;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.List;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * What a laboratory sent, dropped on the day: whose it is, and the cases of that person that it can
 * be held against. Nothing is put anywhere from here.
 */
final class SentScreen {

  private static final int MOST = Setting.CASES_A_PAGE.number();

  private final CaseContext context;
  private final CaseList list;

  SentScreen(CaseContext context, CaseList list) {
    this.context = context;
    this.list = list;
  }

  Route route() {
    return Route.post("/sent", Permission.ENTER_RESULTS, this::page);
  }

  /** The form that takes it. */
  static Node form(PageRequest visit) {
    return SentPage.form(visit, "/sent")
        .with(
            field("Or its text", Html.area("block", "").with("spellcheck", "false")),
            button("Preview"));
  }

  private ServerResponse page(PageRequest visit) {
    byte[] content = SentIn.content(visit, visit.field("block"));
    SentIn sent = SentIn.read(content, context.medicine());
    return Responses.page(
        context
            .frame()
            .toHtml(
                visit,
                "Sent",
                Element.of("h1", "What was sent"),
                SentPage.of(
                    sent,
                    context.medicine().facts(),
                    i -> ways(visit, sent, sent.understood().get(i))),
                form(visit)));
  }

  private Node ways(PageRequest visit, SentIn sent, WorkupReading.Understood one) {
    List<Node> ways = new ArrayList<>();
    for (Summary known : known(visit, Identity.of(one.document()))) {
      ways.add(
          visit
              .form("/cases/" + known.caseId() + "/paste")
              .with(
                  hidden(SentPage.SENT, sent.toField()),
                  button("Hold it against " + known.name())));
    }
    if (ways.isEmpty()) {
      ways.add(note("empty", "No case here bears this identifier."));
    }
    if (visit.isAllowed(Permission.WORK_UP)) {
      ways.add(
          visit
              .form("/import/take")
              .with(
                  hidden("file", JsonText.of(one.document())),
                  button("Begin a case with it").with("class", "second-button")));
    }
    return division("actions").with(ways);
  }

  /** The cases of a person, the last changed first; of somebody without an identifier none. */
  private List<Summary> known(PageRequest visit, Identity whose) {
    list.read(visit);
    return whose
        .id()
        .map(
            id -> {
              List<String> cases = context.summaries().ofPerson(id);
              return context.summaries().holding(id, 0, MOST).stream()
                  .filter(summary -> cases.contains(summary.caseId()))
                  .toList();
            })
        .orElse(List.of());
  }
}
