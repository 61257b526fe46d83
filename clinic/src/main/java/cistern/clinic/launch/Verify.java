package cistern.clinic.launch;

import cistern.clinic.audit.AuditEntry;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.TrailCheck;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Store;
import cistern.clinic.store.StoreCopy;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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

  @Option(
      names = "--contains",
      paramLabel = "HASH",
      description = "a hash that was noted earlier: the trail must still hold its entry")
  private Optional<String> hash = Optional.empty();

  Verify(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    try (Store open = Store.existing(store.location())) {
      TrailCheck check = StoreVerification.check(open);
      check.faults().forEach(console.err()::println);
      if (!check.isWhole()) {
        return Clinic.NOT_VALID;
      }
      if (check.entries() == 0) {
        console.err().println("It holds nothing: nobody ever used it, or its copying was stopped.");
        return Clinic.NOT_VALID;
      }
      console.say("Whole: %d entries; the last one's hash is".formatted(check.entries()));
      console.say(check.head());
      console.say(StoreCopy.words(StoreCopy.counts(open)));
      return hash.map(h -> contains(open, h)).orElse(Clinic.DONE);
    }
  }

  private int contains(Store open, String noted) {
    Optional<AuditEntry> entry =
        open.look(sql -> AuditTrail.withHash(sql, noted.strip().toLowerCase(Locale.ROOT)));
    if (entry.isEmpty()) {
      console.err().println("No entry has this hash: the trail was cut off or rewritten.");
      return Clinic.NOT_VALID;
    }
    console.say("Entry %d has this hash.".formatted(entry.get().number()));
    return Clinic.DONE;
  }
}
