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
import cistern.clinic.audit.AuditTrail.Filter;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.audit.TrailCheck;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Store;
import cistern.clinic.web.Frame;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.List;
import java.util.Locale;
import org.springframework.http.HttpStatus;
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
        Route.post("/trail", Permission.SEE_TRAIL, v -> page(v, checked())),
        Route.post("/trail/find", Permission.SEE_TRAIL, this::find));
  }

  private Node checked() {
    TrailCheck check = StoreVerification.check(store);
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

  private ServerResponse page(PageRequest visit, Node said) {
    return page(visit, HttpStatus.OK, said, TrailPart.of(visit));
  }

  private ServerResponse page(PageRequest visit, HttpStatus status, Node said, TrailPart place) {
    TrailPage shown =
        store.change(
            sql -> {
              trail.append(sql, Note.of(visit.account().id(), Action.TRAIL_READ, ""));
              return TrailPage.of(sql, place);
            });
    TrailNames names = TrailNames.of(accounts);
    return Responses.page(
        status,
        frame.toHtml(
            visit,
            "Audit trail",
            Element.of("h1", "Audit trail"),
            said,
            visit.form("/trail").with(button("Check the chain")),
            new Finder(visit, place.filter(), names).toNode(),
            shown.entries().isEmpty()
                ? note("empty", "No entry.")
                : Html.table(
                    caption(place.filter(), names),
                    List.of("Entry", "When (UTC)", "Who", "What", "About", "Hash"),
                    shown.entries().stream().map(e -> row(e, names)).toList()),
            shown.toWays()));
  }

  private static String caption(Filter filter, TrailNames names) {
    String about = filter.about().isEmpty() ? "" : " about case " + filter.about();
    String person =
        filter.person().isEmpty() ? "" : " by or about " + names.fullName(filter.person());
    return "Entries" + about + person + ", the newest first";
  }

  /** Only what cannot hold anything of a patient gets into the address. */
  private ServerResponse find(PageRequest visit) {
    Filter filter =
        new Filter(
            visit.field(TrailPart.CASE).toLowerCase(Locale.ROOT), visit.field(TrailPart.PERSON));
    if (!TrailPart.isValid(filter)) {
      Node said =
          note("trouble", "A case is looked for by its number, as it stands in its address.")
              .with("role", "alert");
      TrailPart all = new TrailPart(new Filter("", TrailPart.known(filter.person())), 0, 0);
      return page(visit, HttpStatus.UNPROCESSABLE_CONTENT, said, all);
    }
    return Responses.see(new TrailPart(filter, 0, 0).toPath());
  }

  private static List<Node> row(AuditEntry entry, TrailNames names) {
    return List.of(
        text(Long.toString(entry.number())),
        Element.of("span", entry.at()).with("class", "in-one"),
        text(entry.account().isEmpty() ? "the program" : names.fullName(entry.account())),
        Element.of("span", entry.action()).with("class", "in-one"),
        about(entry.subject(), names),
        Element.of("code", entry.hash()).with("class", "hash"));
  }

  /** A case leads to its own entries; an account is a person. */
  private static Node about(String subject, TrailNames names) {
    String first = subject.replaceFirst("/.*", "");
    if (names.isPerson(first)) {
      return text(names.fullName(first));
    }
    Filter filter = new Filter(first, "");
    return first.isEmpty() || !TrailPart.isValid(filter)
        ? text(subject)
        : Html.link(new TrailPart(filter, 0, 0).toPath(), subject);
  }
}
