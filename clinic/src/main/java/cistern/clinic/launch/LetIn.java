package cistern.clinic.launch;

import cistern.clinic.account.Account;
import cistern.clinic.account.Accounts;
import cistern.clinic.account.Chance;
import cistern.clinic.account.OneTimeCodes;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.store.Store;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Makes a one-time code on the console, for whoever is locked out and has nobody to ask. */
@Command(
    name = "let-in",
    description = {
      "Prints a one-time code that lets one person in and lifts a lock. Whoever may write to the",
      "store may do this; the audit trail tells of it. The person's password ends."
    },
    footer = {"", "Example: cistern let-in chief --data clinic"},
    mixinStandardHelpOptions = true)
final class LetIn implements Callable<Integer> {

  private final Console console;

  @Mixin private WhichStore store = new WhichStore();

  @Parameters(paramLabel = "NAME", description = "the name for signing in")
  private String name = "";

  LetIn(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Clock clock = Clock.systemUTC();
    AuditTrail trail = AuditTrail.of(clock);
    Chance chance = Chance.of(new SecureRandom());
    // That there is a store is seen before one would be made.
    Store.existing(store.location()).close();
    try (Store open = Store.open(store.location())) {
      Optional<Account> account =
          Accounts.of(open, trail, clock, chance).all().stream()
              .filter(a -> a.isActive() && a.name().equals(name.strip().toLowerCase(Locale.ROOT)))
              .findFirst();
      if (account.isEmpty()) {
        console.err().println("No open account has this name.");
        return Clinic.NOT_VALID;
      }
      String code = OneTimeCodes.of(open, trail, clock, chance).make(account.get(), "");
      console.say("One-time code for " + account.get().fullName() + ": " + code);
      return Clinic.DONE;
    }
  }
}
