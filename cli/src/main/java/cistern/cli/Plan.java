package cistern.cli;

import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.interpretation.Interpreter;
import cistern.interpretation.PuncturePlanning;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.procedure.Procedure;
import cistern.report.paper.Paper;
import cistern.report.patient.PatientPuncture;
import cistern.report.plan.CardPaper;
import cistern.report.plan.PlanJson;
import cistern.report.plan.PlanPaper;
import cistern.report.plan.TubePaper;
import cistern.report.wording.PrintedTime;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The plan for the puncture of one work-up, and what follows from it. */
@Command(
    name = "plan",
    description = {
      "Plans a lumbar puncture: whether the result would matter, what to look at before, every",
      "guideline's answer for antithrombotics, guidance, needle, tubes with labels, and afterwards",
      "the headache questions and the results that are due. Defers to local policy and the",
      "licensed prescriber."
    },
    footer = {
      "",
      "Example: cistern plan examples/plan-anticoagulated.json --format pdf --out plan.pdf",
      "For the person: cistern plan examples/plan-first.json --for patient",
      "Labels: cistern plan examples/plan-first.json --for labels --format pdf --out labels.pdf"
    },
    mixinStandardHelpOptions = true)
final class Plan implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "FILE", description = "a work-up file; - is standard input")
  private String file = Terminal.STANDARD;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "text (default), json, html or pdf")
  private PaperFormat format = PaperFormat.TEXT;

  @Option(
      names = "--for",
      paramLabel = "READER",
      description = "clinician (default), patient, card (A6) or labels; JSON is the same for all")
  private Reader reader = Reader.CLINICIAN;

  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      description = "of the page for the person: en (default) or de")
  private String language = PatientLanguage.ENGLISH;

  @Option(names = "--out", paramLabel = "FILE", description = "where the plan goes")
  private @Nullable String out;

  @Option(
      names = "--as-of",
      paramLabel = "TIME",
      description = "the time at which results are due or overdue, unless the work-up names it")
  private @Nullable String asOf;

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  /** For whom a plan is written. */
  enum Reader {
    CLINICIAN,
    PATIENT,
    CARD,
    LABELS
  }

  Plan(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    Optional<OffsetDateTime> time = time();
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    Optional<Workup> workup =
        facts
            .flatMap(f -> new WorkupInputs(terminal, f).read(file))
            .map(WorkupReading.Understood::workup);
    if (workup.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    write(facts.orElseThrow(), time.map(t -> asOf(workup.get(), t)).orElse(workup.get()));
    return ExitCode.DONE.number();
  }

  private void write(Facts facts, Workup workup) {
    PuncturePlan plan =
        PuncturePlanning.of(facts).interpret(Interpreter.of(facts).interpret(workup));
    PaperWriter writer = new PaperWriter(terminal, facts, Optional.ofNullable(out));
    Paper paper =
        switch (reader) {
          case CLINICIAN -> PlanPaper.of(workup, plan, PrintedTime.of(facts), writer.foot());
          case CARD -> CardPaper.of(workup, plan, PrintedTime.of(facts), writer.foot());
          case LABELS -> TubePaper.labels(workup, plan, facts, writer.foot());
          case PATIENT ->
              PatientPuncture.of(
                  PatientLanguage.of(spec, language), workup, plan, Cistern.software());
        };
    writer.write(
        format,
        paper,
        json ->
            PlanJson.of(Cistern.software(), facts.version(), facts.policy())
                .write(json, workup, plan));
  }

  private static Workup asOf(Workup workup, OffsetDateTime time) {
    Procedure said = workup.procedure();
    return workup.withProcedure(
        new Procedure(said.before(), said.done(), said.after().withTime(time)));
  }

  private Optional<OffsetDateTime> time() {
    if (asOf == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(OffsetDateTime.parse(asOf));
    } catch (DateTimeParseException e) {
      throw new ParameterException(
          spec.commandLine(),
          "--as-of needs a time with its offset, such as 2031-03-02T10:15:00Z.",
          e);
    }
  }
}
