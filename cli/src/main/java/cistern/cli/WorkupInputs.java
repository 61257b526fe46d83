package cistern.cli;

import cistern.bands.BandReport;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.gel.NamedGel;
import cistern.interpretation.Workup;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The work-ups that a command names, one after another; what is wrong with one is said. */
final class WorkupInputs {

  private final Terminal terminal;
  private final Facts facts;
  private final WorkupFile reader;

  WorkupInputs(Terminal terminal, Facts facts) {
    this.terminal = terminal;
    this.facts = facts;
    this.reader = WorkupFile.of(facts);
  }

  /** The work-up of an input; nothing when it is not valid, and every reason is said. */
  Optional<WorkupReading.Understood> read(String input) {
    return switch (withGel(input, reading(input))) {
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

  /** The reading with the gel that the work-up names, if any, read as well. */
  private WorkupReading withGel(String input, WorkupReading reading) {
    if (reading instanceof WorkupReading.Understood understood
        && understood.workup().bands() instanceof BandReport.GelNamed named) {
      try {
        NamedGel.Read gel = new NamedGel(facts).read(named, folder(input));
        Workup workup = understood.workup().withBands(gel.report()).withProblems(gel.problems());
        return new WorkupReading.Understood(workup, understood.document());
      } catch (NamedGel.NotRead e) {
        return new WorkupReading.NotValid(
            List.of(
                InputProblem.of(
                    InputTrouble.GEL_UNREADABLE,
                    "bands." + e.field(),
                    String.valueOf(e.getMessage()))));
      }
    }
    return reading;
  }

  /** Where a work-up lies, to which the names in it are relative. */
  private static Path folder(String input) {
    Path here = Path.of("");
    Optional<Path> parent =
        input.equals(Terminal.STANDARD)
            ? Optional.empty()
            : Optional.ofNullable(Path.of(input).getParent());
    return parent.orElse(here);
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
