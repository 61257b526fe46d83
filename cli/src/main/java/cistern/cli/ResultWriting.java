package cistern.cli;

import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.interpretation.Interpreter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/**
 * Work-ups in, results out: each as it is read, to a folder, a file or standard output.
 *
 * @param terminal where standard input and output are
 * @param line the command, for what is wrong with it
 * @param files the inputs
 * @param out the file or folder asked for
 */
record ResultWriting(
    Terminal terminal, CommandLine line, List<String> files, Optional<String> out) {

  ExitCode write(Rendering rendering, Facts facts, LocalMapping mapping) {
    return write(rendering, facts, mapping, (file, read) -> Optional.of(read));
  }

  /**
   * Writes each work-up after something is done to it.
   *
   * @param prepared the work-up of an input, or nothing when it cannot go out, which is then said
   */
  ExitCode write(
      Rendering rendering,
      Facts facts,
      LocalMapping mapping,
      BiFunction<String, Understood, Optional<Understood>> prepared) {
    WorkupInputs inputs = new WorkupInputs(terminal, facts, mapping);
    Interpreter interpreter = Interpreter.of(facts);
    Destination destination = destination(rendering);
    boolean[] isAllValid = {true};
    Set<String> ahead = new HashSet<>();
    try (InOrder<RenderedResult> results =
        new InOrder<>(
            result -> {
              ahead.remove(result.id());
              write(destination, result);
            })) {
      for (String file : files) {
        boolean isRead =
            inputs.read(
                file,
                given -> {
                  Optional<Understood> read = prepared.apply(file, given);
                  String id = read.map(r -> r.workup().id()).orElse("");
                  // Whether an id is taken is known once those ahead are written.
                  if (read.isPresent() && !ahead.add(id)) {
                    results.finish();
                  }
                  if (read.isPresent() && inputs.isNew(file, id, destination)) {
                    results.add(() -> result(interpreter, rendering, read.get()));
                  } else {
                    isAllValid[0] = false;
                  }
                });
        isAllValid[0] &= isRead;
      }
      results.finish();
    }
    close(destination);
    return isAllValid[0] ? ExitCode.DONE : ExitCode.INVALID_INPUT;
  }

  private static RenderedResult result(
      Interpreter interpreter, Rendering rendering, Understood read) {
    Result result = new Result(interpreter.interpret(read.workup()), read.document());
    try {
      return new RenderedResult(result.id(), rendering.toBytes(result));
    } catch (IOException e) {
      throw new NotWritten("The result", e);
    }
  }

  private void write(Destination destination, RenderedResult result) {
    if (destination.isFull()) {
      throw needsFolder();
    }
    try {
      destination.accept(result);
    } catch (IOException e) {
      throw new NotWritten("The result", e);
    }
  }

  private static void close(Destination destination) {
    try {
      destination.close();
    } catch (IOException e) {
      throw new NotWritten("The result", e);
    }
  }

  private ParameterException needsFolder() {
    return new ParameterException(
        line, "Several results of this format need a folder: --out FOLDER/");
  }

  private Destination destination(Rendering rendering) {
    boolean isSeveral = files.size() > 1;
    Optional<String> named = out.filter(name -> !name.equals(Terminal.STANDARD));
    if (named.isPresent()) {
      Path path = Path.of(named.get());
      boolean isOneFile = rendering.isStackable() && !rendering.heading().isEmpty();
      return isFolder(named.get(), path, isSeveral && !isOneFile)
          ? new ToFolder(path, rendering)
          : ToFile.of(path, rendering, isSeveral);
    }
    if (isSeveral && !rendering.isStackable()) {
      throw needsFolder();
    }
    return new ToStream(terminal.out(), rendering, isSeveral);
  }

  /** A folder that exists, is meant by a closing slash, or is needed for several results. */
  private static boolean isFolder(String name, Path path, boolean isSeveral) {
    boolean isNamedLikeAFile = String.valueOf(path.getFileName()).contains(".");
    return Files.isDirectory(path)
        || name.endsWith("/")
        || (isSeveral && !Files.exists(path) && !isNamedLikeAFile);
  }
}
