package cistern.clinic.launch;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.Chance;
import cistern.clinic.account.Role;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.cases.Cases;
import cistern.clinic.store.Store;
import cistern.clinic.store.StoreCopy;
import java.time.Clock;
import java.util.Random;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Fills a new store with invented cases, the same for the same seed: to try how it bears many. */
@Command(
    name = "invent",
    description = {
      "Fills a new store with invented cases, drawn by chance from a seed, and five invented"
          + " people,",
      "one of each role; let-in lets them in. Nothing is done to a store that holds anything."
    },
    footer = {"", "Example: cistern invent 50000 --data many"},
    mixinStandardHelpOptions = true)
final class Invent implements Callable<Integer> {

  /** How many cases are written in one change. */
  private static final int BATCH = 500;

  private final Console console;

  @Mixin private WhichStore store = new WhichStore();

  @Parameters(paramLabel = "CASES", description = "how many")
  private int cases;

  @Option(names = "--seed", paramLabel = "NUMBER", description = "of chance (default 1)")
  private long seed = 1;

  Invent(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Clock clock = Clock.systemUTC();
    AuditTrail trail = AuditTrail.of(clock);
    Random random = new Random(seed);
    Chance chance = Chance.of(random);
    try (Store open = Store.open(store.location())) {
      if (!StoreCopy.isEmpty(open)) {
        console.err().println("The store holds something already: nothing was written to it.");
        return Clinic.NOT_WRITTEN;
      }
      Accounts accounts = Accounts.of(open, trail, clock, chance);
      accounts.chain();
      String by = people(accounts);
      Cases kept = Cases.of(open, trail, clock, chance);
      DrawnCases drawn = new DrawnCases(random, clock.instant());
      for (int begun = 0; begun < cases; begun += BATCH) {
        int first = begun;
        open.change(
            sql -> {
              for (int i = first; i < Math.min(cases, first + BATCH); i++) {
                kept.add("begun", drawn.workup(i), by);
              }
              return first;
            });
      }
      console.say("%,d invented cases. Nobody in them exists.".formatted(cases));
    }
    return Clinic.DONE;
  }

  /** One person of each role; the clinician's identifier. */
  private static String people(Accounts accounts) {
    String clinician = "";
    for (Role role : Role.values()) {
      Newcomer newcomer = new Newcomer("invented-" + role.word(), "Invented " + role.word(), role);
      if (accounts.add(newcomer, "") instanceof AccountOutcome.Done<Account> done
          && role == Role.CLINICIAN) {
        clinician = done.value().id();
      }
    }
    return clinician;
  }
}
