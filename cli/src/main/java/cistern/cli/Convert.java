package cistern.cli;

import cistern.exchange.deidentified.SiteSecret;
import cistern.exchange.lab.LocalMapping;
import cistern.fact.Facts;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Results between work-ups, FHIR, HL7 v2 and tables. */
@Command(
    name = "convert",
    description = {
      "Turns a laboratory's report into work-ups, and work-ups into what others read.",
      "What is not understood is kept and listed, never guessed."
    },
    footer = {
      "",
      "Example: cistern convert examples/exchange/report.hl7 --to workup",
      "Without what names a person: --to table --de-identify --site-secret site.secret"
    },
    mixinStandardHelpOptions = true)
final class Convert implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "work-ups, FHIR, HL7 v2 messages or tables; - is standard input")
  private List<String> files = List.of();

  @Option(names = "--to", paramLabel = "FORMAT", description = "workup, fhir, hl7v2 or table")
  private @Nullable Format format;

  @Option(
      names = "--propose-mapping",
      description = "writes a mapping for a table or for local codes, to be checked and confirmed")
  private boolean isProposing;

  @Option(
      names = "--out",
      paramLabel = "FILE-OR-FOLDER",
      description = "where results go; a folder holds <id>.<ext> for each")
  private @Nullable String out;

  @Mixin private CarrierOptions carriers = new CarrierOptions();

  @Mixin private DeidentifyOptions deidentify = new DeidentifyOptions();

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  /** What work-ups become. */
  enum Format {
    WORKUP,
    FHIR,
    HL7V2,
    TABLE
  }

  Convert(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    boolean isSafe = deidentify.isAsked();
    if (isProposing && isSafe) {
      throw new ParameterException(
          spec.commandLine(), "--propose-mapping writes no results that could be de-identified.");
    }
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    Optional<LocalMapping> mapping = facts.flatMap(f -> carriers.mapping(f, terminal));
    if (facts.isEmpty() || mapping.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    if (isProposing) {
      return new MappingWriting(terminal, facts.get(), Optional.ofNullable(out))
          .write(files)
          .number();
    }
    if (format == null) {
      throw new ParameterException(
          spec.commandLine(), "Say what to convert to: --to workup, fhir, hl7v2 or table.");
    }
    ResultWriting writing =
        new ResultWriting(terminal, spec.commandLine(), files, Optional.ofNullable(out));
    Rendering rendering = rendering(format, facts.get());
    return (isSafe
            ? safe(writing, rendering, facts.get(), mapping.get())
            : writing.write(rendering, facts.get(), mapping.get()))
        .number();
  }

  private ExitCode safe(
      ResultWriting writing, Rendering rendering, Facts facts, LocalMapping mapping) {
    Optional<SiteSecret> secret = deidentify.secret(facts, terminal);
    if (secret.isEmpty()) {
      return ExitCode.INVALID_INPUT;
    }
    DeidentifiedExport export = new DeidentifiedExport(terminal, facts, secret.get());
    ExitCode code = writing.write(rendering, facts, mapping, export::safe);
    export.sayGroups();
    return code;
  }

  private static Rendering rendering(Format format, Facts facts) {
    return switch (format) {
      case WORKUP -> new WorkupRendering();
      case FHIR -> CarrierRendering.results(CarrierRendering.Carrier.FHIR, facts);
      case HL7V2 -> CarrierRendering.results(CarrierRendering.Carrier.HL7V2, facts);
      case TABLE -> new TableRendering(false);
    };
  }
}
