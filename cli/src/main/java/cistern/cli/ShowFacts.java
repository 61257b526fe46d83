package cistern.cli;

import cistern.fact.Bibliography;
import cistern.fact.FactTable;
import cistern.fact.Facts;
import cistern.report.json.FactsJson;
import cistern.report.json.IndentedJson;
import cistern.report.text.FactsText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Shows every constant, limit and count in force. */
@Command(
    name = "facts",
    description = "Shows every constant, limit and count in force, with unit, status and source.",
    footer = {"", "Example: cistern facts --policy our-clinic.json --format json"},
    mixinStandardHelpOptions = true)
final class ShowFacts implements Callable<Integer> {

  private final Terminal terminal;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "text (default), json, or csl: the bibliography")
  private Format format = Format.TEXT;

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  /** How facts are shown. */
  enum Format {
    TEXT,
    JSON,
    CSL
  }

  ShowFacts(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    if (facts.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    // The clinic's own settings, which no policy changes, stand at the end.
    Facts all = facts.get().with(FactTable.read(ShowFacts.class, "clinic.tsv"));
    switch (format) {
      case TEXT -> terminal.out().write(FactsText.write(all).getBytes(StandardCharsets.UTF_8));
      case JSON -> IndentedJson.write(terminal.out(), json -> FactsJson.write(json, all));
      case CSL ->
          terminal.out().write(Bibliography.standard().toCsl().getBytes(StandardCharsets.UTF_8));
    }
    terminal.out().flush();
    return ExitCode.DONE.number();
  }
}
