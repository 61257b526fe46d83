package cistern.cli;

import cistern.bands.BandReport;
import cistern.exchange.intake.CohortPart;
import cistern.exchange.intake.Intake;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.gel.NamedGel;
import cistern.interpretation.Workup;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** The work-ups that a command names, one after another; what is wrong with one is said. */
final class WorkupInputs {

  private final Terminal terminal;
  private final Facts facts;
  private final Intake intake;

  WorkupInputs(Terminal terminal, Facts facts) {
    this(terminal, facts, LocalMapping.NONE);
  }

  WorkupInputs(Terminal terminal, Facts facts, LocalMapping mapping) {
    this.terminal = terminal;
    this.facts = facts;
    this.intake = Intake.of(facts, mapping);
  }

  /** The only work-up of an input; nothing when it is not valid, and every reason is said. */
  Optional<WorkupReading.Understood> read(String input) {
    List<WorkupReading.Understood> all = new ArrayList<>();
    boolean isValid = read(input, all::add);
    if (all.size() > 1) {
      terminal.say(input, InputProblem.of(InputTrouble.SEVERAL, "", all.size()));
    }
    return isValid && all.size() == 1 ? Optional.of(all.getFirst()) : Optional.empty();
  }

  /**
   * Reads every work-up of an input: one of a work-up file, perhaps more of a laboratory's report.
   *
   * @return whether all of the input was valid; every reason why not is said
   */
  boolean read(String input, Consumer<WorkupReading.Understood> workups) {
    boolean[] isValid = {true};
    reading(
        input,
        reading -> {
          switch (withGel(input, reading)) {
            case WorkupReading.Understood understood -> workups.accept(understood);
            case WorkupReading.NotValid notValid -> {
              notValid.problems().forEach(problem -> terminal.say(input, problem));
              isValid[0] = false;
            }
          }
        });
    return isValid[0];
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
  WorkupReading withGel(String input, WorkupReading reading) {
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

  /** What comes of each work-up of a part, beside which there are no files of gels. */
  void readings(CohortPart part, Consumer<WorkupReading> readings) {
    part.read(intake, readings);
  }

  /** What comes of each work-up of an input; gels that they name are not read. */
  void reading(String input, Consumer<WorkupReading> readings) {
    if (input.equals(Terminal.STANDARD)) {
      intake.read(terminal.in(), readings);
      return;
    }
    try {
      intake.read(Path.of(input), readings);
    } catch (InvalidPathException e) {
      readings.accept(
          new WorkupReading.NotValid(
              List.of(
                  InputProblem.of(InputTrouble.UNREADABLE, "", "its name is not a path here"))));
    }
  }
}
