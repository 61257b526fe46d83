package cistern.clinic.cases;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.Role;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.house.RuleBook;
import cistern.clinic.house.RuleChange;
import cistern.clinic.store.Location;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;

/**
 * A program of its own that saves without end and says what was acknowledged, until it is killed.
 */
public final class Writer {

  /** What a line that tells of a rule begins with. */
  static final String RULE = "rule";

  private Writer() {}

  /** Writes to the store of the first argument; the second is a seed. */
  public static void main(String[] arguments) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    String where = arguments[0];
    Location location =
        where.startsWith("postgresql:")
            ? new Location.Server(where)
            : new Location.Folder(Path.of(where));
    try (Clinic clinic = Clinic.open(location, Clock.systemUTC(), Long.parseLong(arguments[1]))) {
      Account clinician = clinician(clinic);
      while (true) {
        write(clinic, clinician, out);
        change(clinic, clinician, out);
      }
    }
  }

  /** One case with some changes; each line is printed after its change was acknowledged. */
  static void write(Clinic clinic, Account clinician, PrintStream out) {
    CaseVersion version = clinic.cases().add("question", "{ \"version\": 1 }", clinician.id());
    out.println(version.caseId() + " 1");
    for (long base = 1; base < 9; base++) {
      String workup = "{ \"version\": " + (base + 1) + " }";
      Change change = new Change(base, "results", workup, clinician.id());
      if (clinic.cases().save(version.caseId(), change) instanceof Saving.Kept kept) {
        out.println(version.caseId() + " " + kept.version().number());
      }
    }
  }

  /** One change of a rule, printed once it was acknowledged. */
  private static void change(Clinic clinic, Account clinician, PrintStream out) {
    RuleBook rules = rules(clinic);
    long number = rules.last() + 1;
    String value = Long.toString(number);
    rules
        .add(
            new RuleChange(
                number, "", clinician.id(), "bands.cut-off", value, "1", "invented", "a kill"))
        .ifPresent(kept -> out.println(RULE + " " + kept.number()));
  }

  static RuleBook rules(Clinic clinic) {
    return RuleBook.of(clinic.store(), clinic.trail(), Clock.systemUTC());
  }

  static Account clinician(Clinic clinic) {
    return clinic.accounts().all().stream()
        .findFirst()
        .orElseGet(
            () -> {
              Newcomer newcomer = new Newcomer("writer", "Dr Invented", Role.CLINICIAN);
              AccountOutcome<Account> made = clinic.accounts().add(newcomer, "");
              return Clinic.done(made);
            });
  }
}
