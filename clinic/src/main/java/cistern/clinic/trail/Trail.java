package cistern.clinic.trail;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Accounts;
import cistern.clinic.account.Permission;
import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditEntry;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.audit.TrailCheck;
import cistern.clinic.cases.Kept;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Store;
import cistern.clinic.web.Answers;
import cistern.clinic.web.Frame;
import cistern.clinic.web.Html;
import cistern.clinic.web.Route;
import cistern.clinic.web.Visit;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.List;
import org.springframework.web.servlet.function.ServerResponse;

/** The audit trail, as an auditor sees it; to read it is an entry too. */
public final class Trail {

  private final Frame frame;
  private final Store store;
  private final AuditTrail trail;
  private final Accounts accounts;

  private Trail(Frame frame, Store store, AuditTrail trail, Accounts accounts) {
    this.frame = frame;
    this.store = store;
    this.trail = trail;
    this.accounts = accounts;
  }

  /** The trail of a store. */
  public static Trail of(Frame frame, Store store, AuditTrail trail, Accounts accounts) {
    return new Trail(frame, store, trail, accounts);
  }

  /** Its routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/trail", Permission.SEE_TRAIL, v -> page(v, nothing())),
        Route.post("/trail", Permission.SEE_TRAIL, v -> page(v, checked())));
  }

  private Node checked() {
    TrailCheck check = Kept.check(store);
    String head = " The last entry's hash is " + check.head() + ".";
    return check.isWhole()
        ? note(
                "done",
                "The chain of "
                    + check.entries()
                    + " entries is whole, and every version and"
                    + " report is as it was written."
                    + head)
            .with("role", "status")
        : Html.division(
                "trouble",
                Html.paragraph("Something is not as it was written:"),
                Html.list(check.faults().stream().map(Html::text).toList(), ""))
            .with("role", "alert");
  }

  private ServerResponse page(Visit visit, Node said) {
    List<AuditEntry> entries =
        store.change(
            sql -> {
              trail.append(sql, Note.of(visit.account().id(), Action.TRAIL_READ, ""));
              return AuditTrail.last(sql, Setting.LIST_MOST.number());
            });
    List<List<Node>> rows = entries.stream().map(this::row).toList();
    return Answers.page(
        frame.toHtml(
            visit,
            "Audit trail",
            Element.of("h1", "Audit trail"),
            said,
            visit.form("/trail").with(button("Check the chain")),
            Html.table(
                "The last entries, the newest first",
                List.of("Entry", "When (UTC)", "Who", "What", "About"),
                rows)));
  }

  private List<Node> row(AuditEntry entry) {
    return List.of(
        text(Long.toString(entry.number())),
        text(entry.at()),
        text(entry.account().isEmpty() ? "the program" : accounts.fullName(entry.account())),
        text(entry.action()),
        text(entry.subject()));
  }
}
