package cistern.clinic.launch;

import cistern.clinic.audit.TrailCheck;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import cistern.clinic.store.StoreCopy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SequencedMap;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a backup to an empty store. */
@Command(
    name = "restore",
    description = {
      "Writes a backup to an empty store of either engine, after checking that the backup is"
          + " whole.",
      "A store that holds anything is left alone."
    },
    footer = {"", "Example: cistern restore clinic-2034-05-09 --data clinic"},
    mixinStandardHelpOptions = true)
final class Restore implements Callable<Integer> {

  private final Console console;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Mixin private WhichStore store = new WhichStore();

  @Parameters(paramLabel = "FOLDER", description = "the folder of the backup")
  private Path source = Path.of("");

  Restore(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Location.Folder folder = new Location.Folder(source);
    if (!Files.exists(folder.file())) {
      throw new ParameterException(spec.commandLine(), "There is no backup in that folder.");
    }
    try (Store from = Store.existing(folder)) {
      TrailCheck check = StoreVerification.check(from);
      check.faults().forEach(console.err()::println);
      if (check.entries() == 0) {
        console.err().println("The backup holds nothing: its copying was stopped.");
        return Clinic.NOT_VALID;
      }
      return check.isWhole() ? write(from) : Clinic.NOT_VALID;
    }
  }

  private int write(Store from) {
    try (Store to = Store.open(store.location())) {
      if (!StoreCopy.isEmpty(to)) {
        console.err().println("The store holds something already: nothing was written to it.");
        return Clinic.NOT_WRITTEN;
      }
      SequencedMap<String, Long> copied = StoreCopy.copy(from, to);
      if (!StoreCopy.counts(to).equals(copied)) {
        console.err().println("Not everything was written: look at the store with verify.");
        return Clinic.NOT_WRITTEN;
      }
      console.say("Restored. " + StoreCopy.words(copied));
      return Clinic.DONE;
    }
  }
}
