package cistern.clinic.door;

import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import cistern.clinic.store.StoreCopy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Copies a store, while it is in use, to a folder. */
@Command(
    name = "backup",
    description = {
      "Copies everything in a store to a new folder, also while the clinic runs. The copy is an",
      "embedded store, whatever engine it was made from."
    },
    footer = {"", "Example: cistern backup clinic-2034-05-09 --data clinic"},
    mixinStandardHelpOptions = true)
final class Backup implements Callable<Integer> {

  private final Console console;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Mixin private WhichStore store = new WhichStore();

  @Parameters(paramLabel = "FOLDER", description = "a new folder")
  private Path target = Path.of("");

  Backup(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Location.Folder folder = new Location.Folder(target);
    if (Files.exists(folder.file())) {
      throw new picocli.CommandLine.ParameterException(
          spec.commandLine(), "There is a store in that folder: name a new one.");
    }
    try (Store from = Store.open(store.location());
        Store to = Store.open(folder)) {
      console.say("Copied %d rows to %s.".formatted(StoreCopy.copy(from, to), target));
    }
    return Clinic.DONE;
  }
}
