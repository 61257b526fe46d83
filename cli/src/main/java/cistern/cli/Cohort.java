package cistern.cli;

import cistern.cohort.ColumnsMixedUp;
import cistern.cohort.SitePeople;
import cistern.cohort.SiteStudy;
import cistern.exchange.lab.LocalMapping;
import cistern.fact.Facts;
import cistern.report.cohort.CohortFolder;
import cistern.report.cohort.CohortReport;
import cistern.report.pdf.PdfDocument;
import cistern.report.pdf.SourceDate;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Many work-ups at once. */
@Command(
    name = "cohort",
    description = {
      "Interprets many work-ups under the facts in force and says what they show of the site: its",
      "limits, its quality, and how well findings told one diagnosis from another."
    },
    footer = {
      "",
      "Writes interpretations.csv, dictionary.csv, summary.json, report.html and report.pdf.",
      "Example: cistern cohort examples/cohort.csv --out cohort --cases ms \\",
      "    --controls non-inflammatory"
    },
    mixinStandardHelpOptions = true)
final class Cohort implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      paramLabel = "INPUT",
      description = "a table, a folder of work-ups, or .ndjson, one a line; - is standard input")
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
      names = "--against",
      paramLabel = "FILE",
      description = "an earlier interpretations.csv; changed verdicts are listed with the reason")
  private @Nullable Path against;

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
      names = "--engine",
      paramLabel = "ENGINE",
      description = "local (all cores of this machine), the default, or spark")
  private String engine = "local";

  @Option(
      names = "--numbers",
      description = "only how quotients, fractions and indices lie, of one table of any length")
  private boolean isOfNumbers;

  @Option(
      names = "--uncertainty",
      description = "with --numbers: how many are expected above a limit by imprecision")
  private boolean hasChances;

  @Option(names = "--seed", paramLabel = "NUMBER", description = "of samples drawn anew; 1")
  private long seed = 1;

  @Mixin private CarrierOptions carriers = new CarrierOptions();

  Cohort(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    if (!engine.equals("local")) {
      throw new ParameterException(
          spec.commandLine(),
          "Only the engine of this machine is here: --engine local. Start the other one as"
              + " ./cistern cohort … --engine spark.");
    }
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    Optional<LocalMapping> mapping = facts.flatMap(f -> carriers.mapping(f, terminal));
    if (facts.isEmpty() || mapping.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    return (input.equals(Terminal.STANDARD)
            ? spooled(facts.get(), mapping.get())
            : run(Path.of(input), facts.get(), mapping.get()))
        .number();
  }

  /** Standard input is kept in a file, whose length is known. */
  private ExitCode spooled(Facts facts, LocalMapping mapping) {
    try {
      Path file = Files.createTempFile("cistern-cohort", "");
      try {
        Files.copy(terminal.in(), file, StandardCopyOption.REPLACE_EXISTING);
        return run(file, facts, mapping);
      } finally {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new NotWritten("A copy of standard input", e);
    }
  }

  private ExitCode run(Path from, Facts facts, LocalMapping mapping) {
    if (!Files.isReadable(from)) {
      terminal.err().println(from + ": it cannot be read.");
      return ExitCode.INVALID_INPUT;
    }
    if (isOfNumbers) {
      return new NumberRun(terminal, facts, hasChances).run(from, out, confirmedBy != null);
    }
    CohortRun run = new CohortRun(terminal, facts, mapping, from);
    try {
      Optional<EarlierVerdicts> earlier = earlier();
      if (against != null && earlier.isEmpty()) {
        return ExitCode.INVALID_INPUT;
      }
      return interpret(run, facts, earlier);
    } catch (UncheckedIOException e) {
      terminal.err().println(from + ": reading it stopped before its end.");
      return ExitCode.INVALID_INPUT;
    }
  }

  private Optional<EarlierVerdicts> earlier() {
    if (against == null) {
      return Optional.empty();
    }
    try {
      Optional<EarlierVerdicts> earlier = EarlierVerdicts.read(against);
      if (earlier.isEmpty()) {
        terminal.err().println(against + ": it has no column id.");
      }
      return earlier;
    } catch (IOException e) {
      terminal.err().println(against + ": it cannot be read.");
      return Optional.empty();
    }
  }

  /** Says what looks mixed up; a person may have said that it is right. */
  private boolean isMixedUp(List<ColumnsMixedUp> found, long computed) {
    found.forEach(mixedUp -> terminal.err().println(input + ": " + mixedUp.text()));
    if (found.isEmpty() || confirmedBy != null) {
      return false;
    }
    terminal
        .err()
        .println(
            (computed == 0
                    ? "Nothing was computed."
                    : "Nothing of what was computed before is kept.")
                + " Correct the headings, the units or the mapping; if the"
                + " columns are right as they are, say so with --columns-confirmed-by NAME.");
    return true;
  }

  private ExitCode interpret(CohortRun run, Facts facts, Optional<EarlierVerdicts> earlier) {
    SitePeople people = SiteStudy.people(controls, cases);
    try (CohortFolder folder = CohortFolder.beside(out)) {
      List<ColumnsMixedUp> found =
          run.interpret(new CohortRun.Target(folder, people, earlier, confirmedBy != null));
      if (isMixedUp(found, run.summary().people())) {
        return ExitCode.INVALID_INPUT;
      }
      if (run.summary().people() == 0) {
        terminal.err().println(input + ": it holds no valid work-up. Nothing was written.");
        return ExitCode.INVALID_INPUT;
      }
      people.absent().ifPresent(a -> terminal.err().println(input + ": " + a + "."));
      folder.finish(
          report(run, new SiteStudy(facts, people, seed), facts, earlier.isPresent()),
          facts,
          SourceDate.of(PdfDocument.of(Cistern.software(), facts)));
    } catch (IOException e) {
      throw new NotWritten(out.toString(), e);
    }
    return run.refused() == 0 ? ExitCode.DONE : ExitCode.INVALID_INPUT;
  }

  private CohortReport report(CohortRun run, SiteStudy study, Facts facts, boolean isCompared) {
    return new CohortReport(
        new CohortReport.Made(Cistern.software(), facts.version(), facts.policy()),
        new CohortReport.Groups(
            controls, cases, Optional.ofNullable(confirmedBy), Optional.ofNullable(signedBy)),
        run.isInvented(),
        run.summary(),
        run.refused(),
        CohortReport.Site.of(study),
        isCompared,
        run.changes());
  }
}
