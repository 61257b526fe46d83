package cistern.cli;

import cistern.exchange.intake.Intake;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.LocalMapping;
import cistern.fact.Facts;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Proposes a mapping, which a person checks and confirms.
 *
 * @param terminal where problems are said
 * @param facts in force
 * @param out the file asked for
 */
record MappingWriting(Terminal terminal, Facts facts, Optional<String> out) {

  ExitCode write(List<String> files) {
    InputProblems problems = new InputProblems();
    Optional<Json.Structure> mapping = proposed(files.getFirst(), problems);
    problems.invalid().forEach(problem -> terminal.say(files.getFirst(), problem));
    if (mapping.isEmpty() || !problems.isValid()) {
      return ExitCode.INVALID_INPUT;
    }
    byte[] text = JsonText.of(mapping.get()).getBytes(StandardCharsets.UTF_8);
    Optional<String> file = out.filter(name -> !name.equals(Terminal.STANDARD));
    try {
      if (file.isPresent()) {
        Files.write(Path.of(file.get()), text);
      } else {
        terminal.out().write(text);
        terminal.out().flush();
      }
    } catch (IOException e) {
      throw new NotWritten(file.orElse("The mapping"), e);
    }
    return ExitCode.DONE;
  }

  private Optional<Json.Structure> proposed(String file, InputProblems problems) {
    try {
      return Intake.of(facts, LocalMapping.NONE).propose(Path.of(file), problems);
    } catch (InvalidPathException e) {
      problems.add(InputProblem.of(InputTrouble.UNREADABLE, "", "its name is not a path here"));
      return Optional.empty();
    }
  }
}
