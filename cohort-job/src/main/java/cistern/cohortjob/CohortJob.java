package cistern.cohortjob;

import cistern.exchange.json.InputProblem;
import cistern.exchange.lab.MappingFile;
import cistern.report.cohort.CohortReport.Groups;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.apache.spark.sql.SparkSession;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code cohort} on the distributed engine. */
@Command(
    name = "cohort",
    description = {
      "Interprets many work-ups on Apache Spark, here or on a cluster, and says what they show of",
      "the site, as the engine of this machine does."
    },
    footer = {
      "",
      "Writes interpretations.csv, dictionary.csv, summary.json, report.html and report.pdf.",
      "Example: cistern cohort workups.parquet --engine spark --out cohort --cases ms"
    },
    mixinStandardHelpOptions = true)
public final class CohortJob implements Callable<Integer> {

  private static final int FAULT = 70;

  /** All cores of this machine; a division that fails is done again, three times at most. */
  private static final String HERE = "local[*,4]";

  private static final String LOOPBACK = "127.0.0.1";

  private final PrintStream err;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      paramLabel = "INPUT",
      description = "tables, Parquet, or .ndjson with one work-up or FHIR resource a line")
  private String input = "";

  @Option(names = "--out", required = true, paramLabel = "FOLDER", description = "where it goes")
  private Path out = Path.of("");

  @Option(
      names = "--controls",
      split = ",",
      paramLabel = "DIAGNOSIS",
      description = "final diagnoses of people who count as without the disease")
  private Set<String> controls = Set.of();

  @Option(
      names = "--cases",
      split = ",",
      paramLabel = "DIAGNOSIS",
      description = "final diagnoses of people who count as with it")
  private Set<String> cases = Set.of();

  @Option(
      names = "--columns-confirmed-by",
      paramLabel = "NAME",
      description = "who looked at columns that seem mixed up and says that they are right")
  private @Nullable String confirmedBy;

  @Option(
      names = "--signed-by",
      paramLabel = "NAME",
      description = "who signs the limits that the site's own people suggest: they become a policy")
  private @Nullable String signedBy;

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  @Option(
      names = "--mapping",
      paramLabel = "FILE",
      description = "what local codes and headings mean, confirmed by a person")
  private @Nullable Path mapping;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "zone of times without an offset, such as Europe/Berlin or +01:00")
  private String zone = "";

  @Option(names = "--engine", paramLabel = "ENGINE", description = "spark")
  private String engine = "spark";

  @Option(
      names = "--master",
      paramLabel = "ADDRESS",
      description = "of the cluster; all cores of this machine unless named")
  private String master = "";

  @Option(names = "--numbers", description = "only how quotients, fractions and indices lie")
  private boolean isOfNumbers;

  @Option(
      names = "--uncertainty",
      description = "with --numbers: how many are expected above a limit by imprecision")
  private boolean hasChances;

  @Option(names = "--seed", paramLabel = "NUMBER", description = "of samples drawn anew; 1")
  private long seed = 1;

  CohortJob(PrintStream err) {
    this.err = err;
  }

  /** Runs the command and ends the process with its exit code. */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    PrintStream err =
        new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
    System.exit(run(err, arguments));
  }

  /** Runs the command, whose name may stand before its arguments. */
  static int run(PrintStream err, String... arguments) {
    boolean isNamed = arguments.length > 0 && arguments[0].equals("cohort");
    CommandLine line =
        new CommandLine(new CohortJob(err))
            .setExecutionExceptionHandler((fault, command, parsed) -> ended(err, fault));
    try {
      return line.execute(isNamed ? Arrays.copyOfRange(arguments, 1, arguments.length) : arguments);
    } catch (LinkageError | StackOverflowError | OutOfMemoryError fault) {
      return ended(err, fault);
    }
  }

  private static int ended(PrintStream err, Throwable fault) {
    StackTraceElement[] trace = fault.getStackTrace();
    err.printf(
        "A fault in the program (%s at %s). Your files are unchanged. Please report it.%n",
        fault.getClass().getSimpleName(), trace.length == 0 ? "an unknown place" : trace[0]);
    return FAULT;
  }

  @Override
  public Integer call() {
    if (!engine.equals("spark")) {
      throw new ParameterException(spec.commandLine(), "This is the engine spark: --engine spark.");
    }
    if (!zone.isEmpty() && MappingFile.zone(zone).isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "No zone is called so: try Europe/Berlin or +01:00.");
    }
    Optional<CohortRules> rules = rules();
    if (rules.isEmpty()) {
      return SparkRun.INVALID;
    }
    Groups groups =
        new Groups(
            controls, cases, Optional.ofNullable(confirmedBy), Optional.ofNullable(signedBy));
    SparkSession spark = session();
    try {
      SparkRun run = new SparkRun(err, spark, rules.get(), groups, seed);
      return isOfNumbers ? run.numbers(input, out, hasChances) : run.run(input, out);
    } finally {
      spark.stop();
    }
  }

  /** The rules that the files give; nothing when one is not valid, and every reason is said. */
  private Optional<CohortRules> rules() {
    Optional<String> local = text(policy);
    Optional<String> meanings = text(mapping);
    if (local.isEmpty() || meanings.isEmpty()) {
      return Optional.empty();
    }
    CohortRules rules = new CohortRules(local.get(), meanings.get(), zone);
    List<InputProblem> ofPolicy = rules.policyProblems();
    ofPolicy.forEach(problem -> err.println(policy + ": " + problem.toText()));
    if (!ofPolicy.isEmpty()) {
      return Optional.empty();
    }
    List<InputProblem> ofMapping = rules.mappingProblems(rules.facts());
    ofMapping.forEach(problem -> err.println(mapping + ": " + problem.toText()));
    return Optional.of(rules).filter(r -> ofMapping.isEmpty());
  }

  /** What is written in a file; empty where none is named, nothing where it cannot be read. */
  private Optional<String> text(@Nullable Path file) {
    try {
      return Optional.of(file == null ? "" : Files.readString(file));
    } catch (IOException e) {
      err.println(file + ": it cannot be read.");
      return Optional.empty();
    }
  }

  /**
   * The engine: that of the cluster the job was given to, the one that is named, or this machine.
   */
  private SparkSession session() {
    SparkSession.Builder builder =
        SparkSession.builder()
            .appName("Cistern cohort")
            .config("spark.ui.enabled", "false")
            .config("spark.sql.session.timeZone", "UTC");
    if (master.isEmpty() && System.getProperty("spark.master") != null) {
      return builder.getOrCreate();
    }
    return builder
        .master(master.isEmpty() ? HERE : master)
        .config("spark.driver.host", LOOPBACK)
        .config("spark.driver.bindAddress", LOOPBACK)
        .getOrCreate();
  }
}
