package cistern.cli;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The work-ups that a command names, one after another; what is wrong with one is said. */
final class WorkupInputs {

  private final Terminal terminal;
  private final WorkupFile reader;

  WorkupInputs(Terminal terminal, Facts facts) {
    this.terminal = terminal;
    this.reader = WorkupFile.of(facts);
  }

  /** The work-up of an input; nothing when it is not valid, and every reason is said. */
  Optional<WorkupReading.Understood> read(String input) {
    return switch (reading(input)) {
      case WorkupReading.Understood understood -> Optional.of(understood);
      case WorkupReading.NotValid notValid -> {
        notValid.problems().forEach(problem -> terminal.say(input, problem));
        yield Optional.empty();
      }
    };
  }

  /** Whether a result under this id can be written without losing another; said when it cannot. */
  boolean isNew(String input, String id, Destination destination) {
    if (destination.isTaken(id)) {
      terminal.say(input, InputProblem.of(InputTrouble.ID_TWICE, "id"));
      return false;
    }
    return true;
  }

  private WorkupReading reading(String input) {
    if (input.equals(Terminal.STANDARD)) {
      return reader.read(terminal.in());
    }
    try {
      return reader.read(Path.of(input));
    } catch (InvalidPathException e) {
      return new WorkupReading.NotValid(
          List.of(InputProblem.of(InputTrouble.UNREADABLE, "", "its name is not a path here")));
    }
  }
}
