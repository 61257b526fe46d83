package cistern.clinic.door;

import cistern.clinic.audit.TrailCheck;
import cistern.clinic.cases.Kept;
import cistern.clinic.store.Store;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Checks the audit trail of a store, and everything that is kept against it. */
@Command(
    name = "verify",
    description = {
      "Checks that the audit trail of a store is whole and that every version and every report is",
      "as it was written. Exit code 3 when something is not."
    },
    footer = {"", "Example: cistern verify --data clinic"},
    mixinStandardHelpOptions = true)
final class Verify implements Callable<Integer> {

  private final Console console;

  @Mixin private WhichStore store = new WhichStore();

  Verify(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    try (Store open = Store.open(store.location())) {
      TrailCheck check = Kept.check(open);
      check.faults().forEach(console.err()::println);
      if (!check.isWhole()) {
        return Clinic.NOT_VALID;
      }
      console.say("Whole: %d entries; the last one's hash is".formatted(check.entries()));
      console.say(check.head());
      return Clinic.DONE;
    }
  }
}
