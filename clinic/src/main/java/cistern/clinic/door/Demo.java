package cistern.clinic.door;

import cistern.clinic.account.Account;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.Chance;
import cistern.clinic.account.Outcome;
import cistern.clinic.account.Role;
import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
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

  @Option(names = "--port", paramLabel = "PORT", description = "default 8080; 0 for any free one")
  private int port = Ports.USUAL;

  Demo(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws IOException {
    Path folder = Files.createTempDirectory("cistern-demo");
    Clock clock = Clock.systemUTC();
    try (Store store = Store.open(new Location.Folder(folder));
        WebClinic clinic =
            WebClinic.start(
                store,
                clock,
                Chance.of(new SecureRandom()),
                new WebClinic.Serving(Ports.HERE, port, true))) {
      Account clinician = fill(clinic, clock);
      String url = "http://" + Ports.HERE + ":" + clinic.port();
      String code = clinic.codes().make(clinician, "");
      console.say("Cistern clinic with invented cases. Nothing is kept after it stops.");
      console.say("  Address:          " + url + "/");
      console.say("  One-time sign-in: " + url + "/sign-in?code=" + code);
      console.say("  (or open the address and type the one-time code " + code + ")");
      console.say("Ctrl-C stops it.");
      UntilStopped.await();
    } finally {
      remove(folder);
    }
    return Clinic.DONE;
  }

  private static Account fill(WebClinic clinic, Clock clock) {
    Newcomer invented = new Newcomer("demo", "Dr Invented", Role.CLINICIAN);
    return switch (clinic.accounts().add(invented, "")) {
      case Outcome.Done<Account> done -> {
        InventedCases.of(clock)
            .forEach(workup -> clinic.cases().add("begun", workup, done.value().id()));
        yield done.value();
      }
      case Outcome.NotDone<Account> not -> throw new IllegalStateException(not.reason().name());
    };
  }

  private static void remove(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
      for (Path file : deepestFirst) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
