package cistern.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The program's front door. */
@Command(
    name = "cistern",
    description = {
      "Works up spinal fluid in suspected multiple sclerosis.",
      "For research and education. Not a medical device."
    },
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "The clinic, in a browser: demo (invented cases), serve, verify, backup, restore.",
      "Example: cistern interpret examples/typical-ms.json"
    },
    mixinStandardHelpOptions = true,
    versionProvider = Cistern.Version.class)
public final class Cistern implements Runnable {

  @Spec private CommandSpec spec;

  private Cistern() {
    spec = CommandSpec.create();
  }

  /** Prints the version of the program. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {software()};
    }
  }

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), "Say what to do: name a command.");
  }

  /** Runs a command and ends the process with its exit code. */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    FactsInForce.readAhead();
    PrintStream err =
        new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
    BufferedOutputStream out = new BufferedOutputStream(new FileOutputStream(FileDescriptor.out));
    System.exit(run(new Terminal(System.in, out, err), arguments));
  }

  /** Runs a command and returns its exit code. */
  static int run(Terminal terminal, String... arguments) {
    CommandLine line = new CommandLine(new Cistern());
    commands(terminal, arguments).forEach(line::addSubcommand);
    line.setOut(new PrintWriter(terminal.out(), true, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(terminal.err(), true, StandardCharsets.UTF_8));
    line.setExecutionExceptionHandler((fault, command, parsed) -> ended(terminal, fault));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    try {
      return line.execute(arguments);
    } catch (LinkageError | StackOverflowError | OutOfMemoryError fault) {
      return ended(terminal, fault);
    }
  }

  /** The command that is named, or all of them when none is: describing each takes its time. */
  private static List<Callable<Integer>> commands(Terminal terminal, String... arguments) {
    return switch (arguments.length == 0 ? "" : arguments[0]) {
      case "interpret" -> List.of(new Interpret(terminal));
      case "read-gel" -> List.of(new ReadGel(terminal));
      case "plan" -> List.of(new Plan(terminal));
      case "compare" -> List.of(new Compare(terminal));
      case "convert" -> List.of(new Convert(terminal));
      case "cohort" -> List.of(new Cohort(terminal));
      case "facts" -> List.of(new ShowFacts(terminal));
      default ->
          List.of(
              new Interpret(terminal),
              new ReadGel(terminal),
              new Plan(terminal),
              new Compare(terminal),
              new Convert(terminal),
              new Cohort(terminal),
              new ShowFacts(terminal));
    };
  }

  private static int ended(Terminal terminal, Throwable fault) {
    if (fault instanceof NotWritten notWritten) {
      terminal.err().println(notWritten.getMessage());
      return ExitCode.NOT_WRITTEN.number();
    }
    StackTraceElement[] trace = fault.getStackTrace();
    String place = trace.length == 0 ? "an unknown place" : trace[0].toString();
    terminal
        .err()
        .printf(
            "A fault in the program (%s at %s). Your files are unchanged. Please report it.%n",
            fault.getClass().getSimpleName(), place);
    return ExitCode.FAULT.number();
  }

  /** The name and version of the program. */
  static String software() {
    return "Cistern "
        + Optional.ofNullable(Cistern.class.getPackage().getImplementationVersion())
            .orElse("development");
  }
}
