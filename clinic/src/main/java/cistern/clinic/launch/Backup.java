package cistern.clinic.launch;

import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Location;
import cistern.clinic.store.PassingFolder;
import cistern.clinic.store.Store;
import cistern.clinic.store.StoreCopy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Objects;
import java.util.SequencedMap;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
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
    Path folder = target.toAbsolutePath().normalize();
    if (isTaken(folder)) {
      throw new ParameterException(
          spec.commandLine(), "There is something in that folder: name a new one.");
    }
    Path name = Objects.requireNonNull(folder.getFileName(), "a folder has a name");
    Path beside = folder.resolveSibling("." + name + ".part-" + UUID.randomUUID());
    try (Store from = Store.existing(store.location())) {
      SequencedMap<String, Long> copied = written(from, beside);
      Files.createDirectories(Objects.requireNonNull(folder.getParent()));
      Files.deleteIfExists(folder);
      Files.move(beside, folder, StandardCopyOption.ATOMIC_MOVE);
      console.say("Copied and checked: " + target);
      console.say(StoreCopy.words(copied));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      remove(beside);
    }
    return Clinic.DONE;
  }

  private static boolean isTaken(Path folder) {
    if (!Files.isDirectory(folder)) {
      return Files.exists(folder, LinkOption.NOFOLLOW_LINKS);
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.findAny().isPresent();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The copy, looked at as verify looks at it, with as many rows as were read. */
  private static SequencedMap<String, Long> written(Store from, Path beside) {
    Location.Folder place = new Location.Folder(beside);
    SequencedMap<String, Long> copied;
    try (Store to = Store.open(place)) {
      copied = StoreCopy.copy(from, to);
    }
    try (Store to = Store.existing(place)) {
      boolean isSame = StoreCopy.counts(to).equals(copied);
      if (!isSame || !StoreVerification.check(to).isWhole()) {
        throw new NotWhole();
      }
    }
    return copied;
  }

  private static void remove(Path beside) {
    if (Files.exists(beside)) {
      new PassingFolder(beside).close();
    }
  }

  /** The copy is not what was copied: the store itself is not whole, or the disk lost something. */
  static final class NotWhole extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotWhole() {
      super("The copy is not whole and was removed: look at the store with verify.");
    }
  }
}
