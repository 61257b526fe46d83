package cistern.clinic.launch;

import cistern.clinic.store.NotAStore;
import cistern.clinic.store.StoreTrouble;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The commands of the clinic. */
@Command(
    name = "cistern",
    description = {
      "The clinic: cases from question to signed report.",
      "For research and education. Not a medical device."
    },
    synopsisSubcommandLabel = "COMMAND",
    footer = {"", "Example: cistern demo"},
    mixinStandardHelpOptions = true)
public final class Clinic implements Runnable {

  /** Exit codes of the whole program. */
  static final int DONE = 0;

  static final int NOT_VALID = 3;
  static final int NOT_WRITTEN = 4;
  static final int FAULT = 70;

  @Spec private CommandSpec spec;

  private Clinic() {
    spec = CommandSpec.create();
  }

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), "Say what to do: name a command.");
  }

  /** Runs a command and ends the process with its exit code. */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    PrintStream out = stream(FileDescriptor.out);
    PrintStream err = stream(FileDescriptor.err);
    System.exit(run(new Console(out, err), arguments));
  }

  private static PrintStream stream(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), true, StandardCharsets.UTF_8);
  }

  /** Runs a command and returns its exit code. */
  static int run(Console console, String... arguments) {
    CommandLine line = new CommandLine(new Clinic());
    line.addSubcommand(new Serve(console));
    line.addSubcommand(new Demo(console));
    line.addSubcommand(new Verify(console));
    line.addSubcommand(new Backup(console));
    line.addSubcommand(new Restore(console));
    line.addSubcommand(new LetIn(console));
    line.addSubcommand(new Invent(console));
    line.setOut(new PrintWriter(console.out(), true, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(console.err(), true, StandardCharsets.UTF_8));
    line.setExecutionExceptionHandler((fault, command, parsed) -> ended(console, fault));
    return line.execute(arguments);
  }

  private static int ended(Console console, Throwable fault) {
    Optional<StoreTrouble> trouble = StoreTrouble.of(fault);
    if (trouble.isPresent()) {
      console.err().println(trouble.get().text());
      return NOT_WRITTEN;
    }
    if (fault instanceof Backup.NotWhole) {
      console.err().println(fault.getMessage());
      return NOT_VALID;
    }
    if (fault instanceof NotAStore none) {
      console.err().println(none.getMessage());
      return NOT_VALID;
    }
    if (fault instanceof UncheckedIOException) {
      console.err().println(StoreTrouble.READ_ONLY.text());
      return NOT_WRITTEN;
    }
    if (isPortTaken(fault)) {
      console.err().println("The port is in use: choose another with --port, or --port 0 for any.");
      return NOT_WRITTEN;
    }
    StackTraceElement[] trace = fault.getStackTrace();
    String place = trace.length == 0 ? "an unknown place" : trace[0].toString();
    console
        .err()
        .printf(
            "A fault in the program (%s at %s). Please report it.%n",
            fault.getClass().getSimpleName(), place);
    return FAULT;
  }

  private static boolean isPortTaken(Throwable fault) {
    for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
      if (cause instanceof java.net.BindException
          || cause instanceof org.springframework.boot.web.server.PortInUseException) {
        return true;
      }
    }
    return false;
  }
}
