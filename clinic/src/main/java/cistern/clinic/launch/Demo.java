package cistern.clinic.launch;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.Chance;
import cistern.clinic.account.Role;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.store.Location;
import cistern.clinic.store.PassingFolder;
import cistern.clinic.store.Store;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Runs the clinic on a new store of invented cases, which goes when it stops. */
@Command(
    name = "demo",
    description = {
      "Opens the clinic with invented cases. Nothing is kept after it stops. Prints the address",
      "and a one-time sign-in."
    },
    footer = {"", "Example: cistern demo"},
    mixinStandardHelpOptions = true)
final class Demo implements Callable<Integer> {

  private final Console console;

  @Mixin private WhichPolicy policy = new WhichPolicy();

  @Option(names = "--port", paramLabel = "PORT", description = "default 8080; 0 for any free one")
  private int port = Ports.USUAL;

  Demo(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Optional<RulesInForce> rules = policy.read(console);
    return rules.isEmpty() ? Clinic.NOT_VALID : call(rules.get());
  }

  private int call(RulesInForce rules) {
    Clock clock = Clock.systemUTC();
    try (ShutdownLatch stop = ShutdownLatch.listen();
        PassingFolder folder = PassingFolder.make("cistern-demo");
        Store store = Store.open(new Location.Folder(folder.path()));
        WebClinic clinic =
            WebClinic.start(
                store,
                clock,
                Chance.of(new SecureRandom()),
                new WebClinic.Serving(Ports.HERE, port, true, rules, Optional.empty()))) {
      Account clinician = fill(clinic, clock);
      say(clinic, clinician);
      Thread.ofPlatform().daemon().name("asked-again").start(() -> again(clinic, clinician));
      stop.await();
    }
    return Clinic.DONE;
  }

  private void say(WebClinic clinic, Account clinician) {
    String url = "http://" + Ports.HERE + ":" + clinic.port();
    String code = clinic.codes().make(clinician, "");
    console.say("Cistern clinic with invented cases. Nothing is kept after it stops.");
    console.say("  Address:          " + url + "/");
    console.say("  One-time sign-in: " + url + "/sign-in?code=" + code);
    console.say("  (or open the address and type the one-time code " + code + ")");
    console.say("Enter prints a new sign-in; what was typed stays. Ctrl-C stops it.");
  }

  /** A new sign-in for each line that is typed: who was away too long comes in again. */
  private void again(WebClinic clinic, Account clinician) {
    try (BufferedReader typed =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
      while (typed.readLine() != null) {
        say(clinic, clinician);
      }
    } catch (IOException e) {
      console.err().println("Nothing more can be typed here.");
    }
  }

  private static Account fill(WebClinic clinic, Clock clock) {
    Newcomer invented = new Newcomer("demo", "Dr Invented", Role.CLINICIAN);
    return switch (clinic.accounts().add(invented, "")) {
      case AccountOutcome.Done<Account> done -> {
        String by = done.value().id();
        InventedCases.of(clock).stream()
            .map(workup -> InventedCases.withGel(workup, clinic.context(), by))
            .forEach(workup -> clinic.cases().add("begun", workup, by));
        yield done.value();
      }
      case AccountOutcome.NotDone<Account> not ->
          throw new IllegalStateException(not.reason().name());
    };
  }
}
