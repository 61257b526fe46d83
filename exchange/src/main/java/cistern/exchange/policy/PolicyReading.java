package cistern.exchange.policy;

import cistern.exchange.json.InputProblem;
import cistern.fact.Policy;
import java.util.List;

/** What came of reading a policy file. */
public sealed interface PolicyReading {

  /**
   * A valid policy.
   *
   * @param policy its values in the units of the facts that they replace
   */
  record Understood(Policy policy) implements PolicyReading {}

  /**
   * No policy.
   *
   * @param problems every reason, at least one
   */
  record NotValid(List<InputProblem> problems) implements PolicyReading {
    /** Copies the problems. */
    public NotValid {
      problems = List.copyOf(problems);
    }
  }
}
