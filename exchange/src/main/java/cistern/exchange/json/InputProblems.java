package cistern.exchange.json;

import cistern.finding.Problem;
import java.util.ArrayList;
import java.util.List;

/**
 * Everything that a reader notes on its way through one input, in the order in which it meets it:
 * reasons why the input is not valid, and what is valid but not understood.
 */
public final class InputProblems {

  private final List<InputProblem> invalid = new ArrayList<>();
  private final List<Problem> kept = new ArrayList<>();

  /** Notes a reason why the input is not valid. */
  public void add(Place place, InputTrouble trouble, Object... arguments) {
    add(InputProblem.of(trouble, place.path(), arguments));
  }

  /** Notes a reason why the input is not valid. */
  public void add(InputProblem problem) {
    invalid.add(problem);
  }

  /** Notes something that is kept and shown, though something is wrong with it. */
  public void add(Problem problem) {
    kept.add(problem);
  }

  /** Whether the input is valid so far. */
  public boolean isValid() {
    return invalid.isEmpty();
  }

  /** The reasons why the input is not valid. */
  public List<InputProblem> invalid() {
    return List.copyOf(invalid);
  }

  /** What is valid, but wrong or not understood. */
  public List<Problem> kept() {
    return List.copyOf(kept);
  }
}
