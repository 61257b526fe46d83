package cistern.clinic.launch;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.Chance;
import cistern.clinic.account.Role;
import cistern.clinic.cases.Held;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import cistern.clinic.web.Gateway;
import cistern.clinic.web.Network;
import cistern.gel.GelFacts;
import cistern.report.look.ReportFacts;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** The application on a free port, with a clock that a test moves. */
final class Running implements AutoCloseable {

  /** Of every invented person. */
  static final String PASSWORD = "the invented password";

  /** The rules that ship with the program, read once for every test. */
  private static final RulesInForce STANDARD =
      new RulesInForce(ReportFacts.of(GelFacts.standard()), "");

  private final Store store;
  private final WebClinic clinic;
  private final Held clock = new Held(Instant.parse("2034-05-09T08:00:00Z"));

  private Running(Location location, RulesInForce rules, Optional<Gateway> gateway) {
    store = Store.open(location);
    clinic =
        WebClinic.start(
            store,
            clock,
            Chance.of(new Random(11)),
            new WebClinic.Serving("127.0.0.1", 0, true, rules, gateway));
  }

  static Running on(Location location) {
    return on(location, STANDARD);
  }

  /** Under rules of its own. */
  static Running on(Location location, RulesInForce rules) {
    return new Running(location, rules, Optional.empty());
  }

  /** As behind a server that speaks HTTPS; where it is, when it is not on this machine. */
  static Running behindHttps(Location location, String... proxies) {
    return new Running(
        location,
        STANDARD,
        Optional.of(Gateway.of(Arrays.stream(proxies).map(Network::parse).toList())));
  }

  void pass(Duration time) {
    clock.pass(time);
  }

  /** Holds up whoever reads cases behind a page, until the clock is released. */
  Held clock() {
    return clock;
  }

  /** The day, once every case on it is read. */
  static String day(Caller caller) {
    String day = caller.get("/day").body();
    while (day.contains("Still reading")) {
      day = caller.get("/day").body();
    }
    return day;
  }

  Store store() {
    return store;
  }

  WebClinic clinic() {
    return clinic;
  }

  Caller stranger() {
    return new Caller(clinic.port());
  }

  /** An invented person of a role; the same one when asked again. */
  Account person(Role role) {
    return clinic.accounts().all().stream()
        .filter(a -> a.name().equals(role.word()))
        .findFirst()
        .orElseGet(() -> newcomer(role));
  }

  private Account newcomer(Role role) {
    Newcomer newcomer = new Newcomer(role.word(), "Invented " + role.word(), role);
    return switch (clinic.accounts().add(newcomer, "")) {
      case AccountOutcome.Done<Account> done -> withPassword(done.value());
      case AccountOutcome.NotDone<Account> not -> throw new AssertionError(not.reason());
    };
  }

  private Account withPassword(Account account) {
    return switch (clinic.accounts().withPassword(account, PASSWORD)) {
      case AccountOutcome.Done<Account> done -> done.value();
      case AccountOutcome.NotDone<Account> not -> throw new AssertionError(not.reason());
    };
  }

  /** Somebody of a role who has come in. */
  Caller signedIn(Role role) {
    Caller caller = stranger();
    caller.post("/sign-in", Map.of("name", person(role).name(), "password", PASSWORD));
    return caller;
  }

  /** Brings somebody of a role in through the form, in a browser. */
  void signIn(Page page, Role role) {
    String name = person(role).name();
    page.navigate("http://127.0.0.1:" + clinic.port() + "/sign-in");
    page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true)).fill(name);
    page.getByLabel("Password", new Page.GetByLabelOptions().setExact(true)).fill(PASSWORD);
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in").setExact(true))
        .click();
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign out")).waitFor();
  }

  @Override
  public void close() {
    clinic.close();
    store.close();
  }
}
