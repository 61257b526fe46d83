package cistern.cli;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.followup.Comparison;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.RepeatPunctures;
import cistern.interpretation.Workup;
import cistern.report.compare.ComparisonJson;
import cistern.report.compare.ComparisonPaper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Repeat punctures of one person. */
@Command(
    name = "compare",
    description = {
      "Compares repeat punctures of one person: whether they compare at all, which values changed",
      "by more than measurement explains, and which bands came or went."
    },
    footer = {
      "",
      "Example: cistern compare examples/repeat-first.json examples/repeat-second.json"
    },
    mixinStandardHelpOptions = true)
final class Compare implements Callable<Integer> {

  private final Terminal terminal;

  @Parameters(arity = "2..*", paramLabel = "FILE", description = "work-up files of one person")
  private List<String> files = List.of();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "text (default), json, html or pdf")
  private PaperFormat format = PaperFormat.TEXT;

  @Option(
      names = "--same-person",
      description = "the files are of one person although person.id differs or is missing")
  private boolean isSamePerson;

  @Option(names = "--out", paramLabel = "FILE", description = "where the comparison goes")
  private @Nullable String out;

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  Compare(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    Optional<List<Interpretation>> punctures = facts.flatMap(this::punctures);
    if (punctures.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    RepeatPunctures repeat = RepeatPunctures.of(facts.orElseThrow());
    Optional<String> refusal = isSamePerson ? Optional.empty() : repeat.refusal(punctures.get());
    if (refusal.isPresent()) {
      terminal
          .err()
          .println(refusal.get() + ". If they are of one person all the same: --same-person.");
      return ExitCode.INVALID_INPUT.number();
    }
    write(facts.orElseThrow(), punctures.get(), repeat.compare(punctures.get()));
    return ExitCode.DONE.number();
  }

  /** The interpretations, when every file is valid and no id comes twice. */
  private Optional<List<Interpretation>> punctures(Facts facts) {
    WorkupInputs inputs = new WorkupInputs(terminal, facts);
    Interpreter interpreter = Interpreter.of(facts);
    List<Interpretation> all = new ArrayList<>();
    for (String file : files) {
      Optional<Workup> workup = inputs.read(file).map(WorkupReading.Understood::workup);
      boolean isTwice =
          workup.isPresent()
              && all.stream().anyMatch(i -> i.workup().id().equals(workup.get().id()));
      if (isTwice) {
        terminal.say(file, InputProblem.of(InputTrouble.ID_TWICE, "id"));
      } else {
        workup.map(interpreter::interpret).ifPresent(all::add);
      }
    }
    return all.size() == files.size() ? Optional.of(all) : Optional.empty();
  }

  private void write(Facts facts, List<Interpretation> punctures, Comparison comparison) {
    PaperWriter writer = new PaperWriter(terminal, facts, Optional.ofNullable(out));
    boolean isInvented = punctures.stream().anyMatch(i -> i.workup().remarks().isInvented());
    writer.write(
        format,
        ComparisonPaper.of(
            comparison,
            facts,
            isInvented ? List.of(Caution.INVENTED.text()) : List.of(),
            writer.foot()),
        json ->
            ComparisonJson.of(Cistern.software(), facts.version(), facts.policy())
                .write(json, comparison));
  }
}
