package cistern.cli;

import cistern.exchange.lab.LocalMapping;
import cistern.fact.Facts;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.patient.PatientWords;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Work-ups in, interpretations out. */
@Command(
    name = "interpret",
    description = {
      "Says what the CSF and serum of one puncture show: whether antibody is made inside",
      "the CNS, whether the barrier leaks, what disagrees, and what to do next."
    },
    footer = {
      "",
      "Example: cistern interpret examples/typical-ms.json",
      "For the chart: cistern interpret examples/typical-ms.json --for chart",
      "Several: cistern interpret examples/*.json --format json --out results/"
    },
    mixinStandardHelpOptions = true)
final class Interpret implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "work-ups, FHIR, HL7 v2 messages or tables; - is standard input")
  private List<String> files = List.of();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "text (default), json, html, pdf, fhir, hl7v2 or table")
  private Format format = Format.TEXT;

  @Option(
      names = "--for",
      paramLabel = "READER",
      description = "clinician (default), referrer, patient or chart: a comment to paste")
  private Audience audience = Audience.CLINICIAN;

  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      description = "of the page for the person: en (default) or de")
  private String language = PatientLanguage.ENGLISH;

  @Option(
      names = "--out",
      paramLabel = "FILE-OR-FOLDER",
      description = "where results go; a folder holds <id>.<ext> for each")
  private @Nullable String out;

  @Option(names = "--attach-pdf", description = "with fhir and hl7v2: the report as PDF inside")
  private boolean isAttached;

  @Mixin private CarrierOptions carriers = new CarrierOptions();

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  /** How an interpretation is written. */
  enum Format {
    TEXT,
    JSON,
    HTML,
    PDF,
    FHIR,
    HL7V2,
    TABLE
  }

  Interpret(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    if (facts.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    Optional<LocalMapping> mapping = carriers.mapping(facts.get(), terminal);
    if (mapping.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    return new ResultWriting(terminal, spec.commandLine(), files, Optional.ofNullable(out))
        .write(rendering(facts.get()), facts.get(), mapping.get())
        .number();
  }

  private Rendering rendering(Facts facts) {
    PatientWords words = PatientLanguage.of(spec, language);
    Page page = Page.of(Cistern.software(), facts).withWords(words);
    return switch (format) {
      case TEXT -> new TextRendering(page, audience);
      case JSON -> new JsonRendering(facts);
      case HTML -> new HtmlRendering(page, audience);
      case PDF -> new PdfRendering(facts, words, audience);
      case FHIR -> CarrierRendering.report(CarrierRendering.Carrier.FHIR, facts, pdf(facts, words));
      case HL7V2 ->
          CarrierRendering.report(CarrierRendering.Carrier.HL7V2, facts, pdf(facts, words));
      case TABLE -> new TableRendering(true);
    };
  }

  private Optional<Rendering> pdf(Facts facts, PatientWords words) {
    return isAttached ? Optional.of(new PdfRendering(facts, words, audience)) : Optional.empty();
  }
}
