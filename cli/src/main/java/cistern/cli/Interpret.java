package cistern.cli;

import cistern.fact.Facts;
import cistern.interpretation.Interpreter;
import cistern.report.page.Audience;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
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
      "Several: cistern interpret examples/*.json --format json --out results/"
    },
    mixinStandardHelpOptions = true)
final class Interpret implements Callable<Integer> {

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "work-up files; - is standard input")
  private List<String> files = List.of();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "text (default), json, html or pdf")
  private Format format = Format.TEXT;

  @Option(
      names = "--for",
      paramLabel = "READER",
      description = "clinician (default), referrer or patient")
  private Audience audience = Audience.CLINICIAN;

  @Option(
      names = "--out",
      paramLabel = "FILE-OR-FOLDER",
      description = "where results go; a folder holds <id>.<ext> for each")
  private @Nullable String out;

  @Option(names = "--policy", paramLabel = "FILE", description = "local policy, JSON")
  private @Nullable Path policy;

  /** How an interpretation is written. */
  enum Format {
    TEXT,
    JSON,
    HTML,
    PDF
  }

  Interpret(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    Optional<Facts> facts = FactsInForce.read(Optional.ofNullable(policy), terminal);
    if (facts.isEmpty()) {
      return ExitCode.INVALID_INPUT.number();
    }
    WorkupInputs inputs = new WorkupInputs(terminal, facts.get());
    Interpreter interpreter = Interpreter.of(facts.get());
    Destination destination = destination(facts.get());
    boolean isAllValid = true;
    for (String file : files) {
      isAllValid &=
          inputs
              .read(file)
              .filter(read -> inputs.isNew(file, read.workup().id(), destination))
              .map(read -> new Result(interpreter.interpret(read.workup()), read.document()))
              .map(result -> written(destination, result))
              .isPresent();
    }
    destination.close();
    return (isAllValid ? ExitCode.DONE : ExitCode.INVALID_INPUT).number();
  }

  private static Destination written(Destination destination, Result result) {
    try {
      destination.accept(result);
      return destination;
    } catch (IOException e) {
      throw new NotWritten("The result", e);
    }
  }

  private Destination destination(Facts facts) {
    Rendering rendering =
        switch (format) {
          case TEXT -> new TextRendering(facts, audience);
          case JSON -> new JsonRendering();
          case HTML -> new HtmlRendering(facts, audience);
          case PDF -> new PdfRendering(facts, audience);
        };
    boolean isSeveral = files.size() > 1;
    if (out != null && !out.equals("-")) {
      Path path = Path.of(out);
      return isFolder(path, isSeveral)
          ? new ToFolder(path, rendering)
          : ToFile.of(path, rendering, isSeveral);
    }
    if (isSeveral && !rendering.isStackable()) {
      throw new ParameterException(
          spec.commandLine(), "Several results of this format need a folder: --out FOLDER/");
    }
    return new ToStream(terminal.out(), rendering, isSeveral);
  }

  /** A folder that exists, is meant by a closing slash, or is needed for several results. */
  private boolean isFolder(Path path, boolean isSeveral) {
    boolean isNamedLikeAFile = String.valueOf(path.getFileName()).contains(".");
    return Files.isDirectory(path)
        || String.valueOf(out).endsWith("/")
        || (isSeveral && !Files.exists(path) && !isNamedLikeAFile);
  }
}
