package cistern.exchange.workup;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.Json;
import cistern.interpretation.Workup;
import java.util.List;

/** What came of reading a work-up file. */
public sealed interface WorkupReading {

  /**
   * A valid work-up.
   *
   * @param workup with what is valid but wrong or not understood among its problems
   * @param document the whole file, so that nothing in it is lost
   */
  record Understood(Workup workup, Json.Structure document) implements WorkupReading {}

  /**
   * No work-up.
   *
   * @param problems every reason, at least one
   */
  record NotValid(List<InputProblem> problems) implements WorkupReading {
    /** Copies the problems. */
    public NotValid {
      problems = List.copyOf(problems);
    }
  }
}
