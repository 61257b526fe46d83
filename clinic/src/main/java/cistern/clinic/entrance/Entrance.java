package cistern.clinic.entrance;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.paragraph;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.OneTimeCodes;
import cistern.clinic.account.PasswordRule;
import cistern.clinic.account.Permission;
import cistern.clinic.account.Refused;
import cistern.clinic.account.Role;
import cistern.clinic.setting.Setting;
import cistern.clinic.web.Frame;
import cistern.clinic.web.KeptForm;
import cistern.clinic.web.LocalPath;
import cistern.clinic.web.Network;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.clinic.web.Session;
import cistern.clinic.web.SignInForms;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/** Coming in, going out, and the password of whoever is in. */
public final class Entrance {

  private static final String TOO_OFTEN =
      "Too many tries from this address. Nothing is locked: wait a minute, then try again.";
  private static final String CODE_NAME = "code";

  private final Frame frame;
  private final Accounts accounts;
  private final OneTimeCodes codes;
  private final SignInRate rate;

  private Entrance(Frame frame, Accounts accounts, OneTimeCodes codes, Clock clock) {
    this.frame = frame;
    this.accounts = accounts;
    this.codes = codes;
    this.rate = new SignInRate(clock);
  }

  /** The entrance of a clinic. */
  public static Entrance of(Frame frame, Accounts accounts, OneTimeCodes codes, Clock clock) {
    return new Entrance(frame, accounts, codes, clock);
  }

  /** Its routes. */
  public List<Route> routes() {
    return List.of(
        Route.openGet("/", this::start),
        Route.openGet("/sign-in", this::signInPage),
        Route.openPost("/sign-in", this::signIn),
        Route.openPost("/code", this::useCode),
        Route.openPost("/first", this::first),
        Route.post("/sign-out", Permission.BE_HERE, this::signOut),
        Route.get("/me", Permission.BE_HERE, v -> mePage(v, Optional.empty())),
        Route.post("/me", Permission.BE_HERE, this::setPassword));
  }

  private ServerResponse start(PageRequest visit) {
    return Responses.see(visit.visitor().map(a -> placeOf(a.role())).orElse("/sign-in"));
  }

  private static String placeOf(Role role) {
    return switch (role) {
      case CLINICIAN, NURSE, LABORATORY -> "/day";
      case AUDITOR -> "/trail";
      case ADMINISTRATOR -> "/accounts";
    };
  }

  private ServerResponse signInPage(PageRequest visit) {
    return visit.visitor().isPresent() && visit.field(CODE_NAME).isEmpty()
        ? Responses.see(next(visit, visit.account()))
        : page(visit, HttpStatus.OK, "");
  }

  /** Only a path of this program is gone to. */
  private static String next(PageRequest visit, Account account) {
    String next = visit.field("next");
    return LocalPath.isOne(next) && !next.equals("/sign-in") && !next.equals("/code")
        ? next
        : placeOf(account.role());
  }

  private ServerResponse page(PageRequest visit, HttpStatus status, String trouble) {
    String code = visit.field(CODE_NAME);
    boolean isFirst = accounts.isEmpty();
    Optional<KeptForm> kept = KeptForm.of(visit);
    Node said = trouble.isEmpty() ? nothing() : note("trouble", trouble).with("role", "alert");
    return Responses.page(
        status,
        isFirst
            ? frame.toHtml(
                visit,
                "First administrator",
                Element.of("h1", "The first administrator"),
                said,
                firstForm(visit, code))
            : frame.toHtml(
                visit,
                "Sign in",
                Element.of("h1", "Sign in"),
                said,
                code.isEmpty() ? SignInForms.password(visit, kept) : nothing(),
                SignInForms.code(visit, kept)));
  }

  private static Element firstForm(PageRequest visit, String code) {
    return visit
        .form("/first")
        .with(
            paragraph(
                "Nobody has an account yet. The one-time code stands on the console where the"
                    + " program was started."),
            field("One-time code", input(CODE_NAME, code).with("autocomplete", "off")),
            field("Name for signing in", input("name", "").with("autocomplete", "username")),
            field("Your name", input("fullName", "").with("autocomplete", "name")),
            field("Password, " + PasswordRule.WORDS, password("password", "new-password")),
            button("Make the account"));
  }

  private static Element password(String name, String kind) {
    return Element.of("input")
        .with("type", "password")
        .with("name", name)
        .with("autocomplete", kind);
  }

  private ServerResponse signIn(PageRequest visit) {
    if (!isAllowed(visit)) {
      return page(visit, HttpStatus.TOO_MANY_REQUESTS, TOO_OFTEN);
    }
    return entered(visit, accounts.signIn(visit.field("name"), visit.field("password")));
  }

  private ServerResponse useCode(PageRequest visit) {
    if (!isAllowed(visit)) {
      return page(visit, HttpStatus.TOO_MANY_REQUESTS, TOO_OFTEN);
    }
    return entered(visit, codes.signIn(visit.field(CODE_NAME), accounts));
  }

  private ServerResponse first(PageRequest visit) {
    if (!isAllowed(visit)) {
      return page(visit, HttpStatus.TOO_MANY_REQUESTS, TOO_OFTEN);
    }
    Newcomer newcomer =
        new Newcomer(
            visit.field("name").toLowerCase(Locale.ROOT),
            visit.field("fullName"),
            Role.ADMINISTRATOR);
    return entered(
        visit, codes.begin(visit.field(CODE_NAME), accounts, newcomer, visit.field("password")));
  }

  private boolean isAllowed(PageRequest visit) {
    String address = visit.request().servletRequest().getRemoteAddr();
    return rate.isAllowed(Network.caller(address, Setting.CALLER_BITS.number()));
  }

  private ServerResponse entered(PageRequest visit, AccountOutcome<Account> outcome) {
    return switch (outcome) {
      case AccountOutcome.Done<Account> done -> {
        Session.begin(visit.request().servletRequest(), done.value());
        yield KeptForm.of(visit)
            .map(kept -> again(new PageRequest(visit.request(), Optional.of(done.value())), kept))
            .orElseGet(() -> Responses.see(next(visit, done.value())));
      }
      case AccountOutcome.NotDone<Account> not ->
          page(visit, HttpStatus.UNAUTHORIZED, not.reason().text());
    };
  }

  private ServerResponse again(PageRequest visit, KeptForm kept) {
    if (kept.isWithFile()) {
      Session.leave(visit.request().servletRequest(), kept);
      return Responses.see(kept.path());
    }
    return Responses.page(
        frame.toHtml(
            visit,
            "Signed in again",
            Element.of("h1", "Signed in again"),
            kept.toSendAgain(visit)));
  }

  private ServerResponse signOut(PageRequest visit) {
    Session.end(visit.request().servletRequest());
    accounts.signOut(visit.account());
    return Responses.see("/sign-in");
  }

  private ServerResponse mePage(PageRequest visit, Optional<Refused> refused) {
    return Responses.page(
        refused.isEmpty() ? HttpStatus.OK : HttpStatus.BAD_REQUEST,
        frame.toHtml(
            visit,
            "Password",
            Element.of("h1", visit.account().fullName()),
            paragraph("Signed in as " + visit.account().name() + "."),
            refused
                .<Node>map(r -> note("trouble", r.text()).with("role", "alert"))
                .orElse(nothing()),
            visit
                .form("/me")
                .with(
                    accounts.isWithPassword(visit.account())
                        ? field("Password until now", password("current", "current-password"))
                        : nothing(),
                    field(
                        "New password, " + PasswordRule.WORDS,
                        password("password", "new-password")),
                    button("Set the password"))));
  }

  private ServerResponse setPassword(PageRequest visit) {
    return switch (accounts.change(
        visit.account(), visit.field("current"), visit.field("password"))) {
      case AccountOutcome.Done<Account> done -> {
        Session.begin(visit.request().servletRequest(), done.value());
        yield Responses.see("/");
      }
      case AccountOutcome.NotDone<Account> not -> mePage(visit, Optional.of(not.reason()));
    };
  }
}
