package cistern.clinic.staff;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.OneTimeCodes;
import cistern.clinic.account.Permission;
import cistern.clinic.account.Role;
import cistern.clinic.web.Frame;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/** Who may come in, as an administrator sees it. */
public final class Staff {

  private final Frame frame;
  private final Accounts accounts;
  private final OneTimeCodes codes;

  private Staff(Frame frame, Accounts accounts, OneTimeCodes codes) {
    this.frame = frame;
    this.accounts = accounts;
    this.codes = codes;
  }

  /** The accounts of a clinic. */
  public static Staff of(Frame frame, Accounts accounts, OneTimeCodes codes) {
    return new Staff(frame, accounts, codes);
  }

  /** Its routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/accounts", Permission.KEEP_ACCOUNTS, v -> page(v, HttpStatus.OK, nothing())),
        Route.post("/accounts", Permission.KEEP_ACCOUNTS, this::add),
        Route.post("/accounts/{id}/code", Permission.KEEP_ACCOUNTS, this::makeCode),
        Route.post("/accounts/{id}/close", Permission.KEEP_ACCOUNTS, this::close));
  }

  private ServerResponse page(PageRequest visit, HttpStatus status, Node said) {
    List<List<Node>> rows = accounts.all().stream().map(account -> row(visit, account)).toList();
    return Responses.page(
        status,
        frame.toHtml(
            visit,
            "Accounts",
            Element.of("h1", "Accounts"),
            said,
            Html.table("Who may come in", List.of("Name", "Person", "Role", "State", "Do"), rows),
            section("new", "A new account", newForm(visit))));
  }

  private static List<Node> row(PageRequest visit, Account account) {
    String path = "/accounts/" + account.id();
    Node actions =
        account.isActive()
            ? Html.division(
                "actions",
                visit.form(path + "/code").with(button("One-time code").with("class", "plain")),
                visit.form(path + "/close").with(button("Close").with("class", "plain")))
            : nothing();
    return List.of(
        text(account.name()),
        text(account.fullName()),
        text(account.role().word()),
        text(account.isActive() ? "open" : "closed"),
        actions);
  }

  private static Element newForm(PageRequest visit) {
    List<Html.Choice> roles =
        Arrays.stream(Role.values()).map(r -> new Html.Choice(r.word(), r.word())).toList();
    return visit
        .form("/accounts")
        .with(
            field("Name for signing in", input("name", "").with("autocomplete", "off")),
            field(
                "Name of the person, as under a report",
                input("fullName", "").with("autocomplete", "off")),
            field("Role", Html.select("role", Role.CLINICIAN.word(), roles)),
            button("Make the account"));
  }

  private ServerResponse add(PageRequest visit) {
    Optional<Role> role = Role.parse(visit.field("role"));
    if (role.isEmpty()) {
      return page(visit, HttpStatus.BAD_REQUEST, trouble("Choose one of the roles."));
    }
    Newcomer newcomer = new Newcomer(visit.field("name"), visit.field("fullName"), role.get());
    return switch (accounts.add(newcomer, visit.account().id())) {
      case AccountOutcome.NotDone<Account> not ->
          page(visit, HttpStatus.BAD_REQUEST, trouble(not.reason().text()));
      case AccountOutcome.Done<Account> done -> withCode(visit, done.value());
    };
  }

  private ServerResponse makeCode(PageRequest visit) {
    return accounts
        .find(visit.path("id"))
        .map(account -> withCode(visit, account))
        .orElseGet(
            () -> page(visit, HttpStatus.NOT_FOUND, trouble("There is no such open account.")));
  }

  private ServerResponse withCode(PageRequest visit, Account account) {
    String code = codes.make(account, visit.account().id());
    Element said =
        note("done", "One-time code for " + account.name() + ": ")
            .with(Element.of("strong", code).with("class", "code"))
            .withText(" It is shown only now. Give it to the person; it lets in once.")
            .with("role", "status");
    return page(visit, HttpStatus.OK, said);
  }

  private ServerResponse close(PageRequest visit) {
    return switch (accounts.close(visit.path("id"), visit.account().id())) {
      case AccountOutcome.Done<String> done -> Responses.see("/accounts");
      case AccountOutcome.NotDone<String> not ->
          page(visit, HttpStatus.BAD_REQUEST, trouble(not.reason().text()));
    };
  }

  private static Element trouble(String text) {
    return note("trouble", text).with("role", "alert");
  }
}
