package cistern.puncture.specimen;

import cistern.fact.Grounds;
import cistern.puncture.procedure.CsfTest;
import java.util.List;

/**
 * One tube.
 *
 * @param order its number, from 1
 * @param ml how much to fill, mL
 * @param minimumMl the least that its tests need, mL
 * @param tests what it is for; empty for the reserve
 * @param container what it is made of
 * @param limit by when it must be where
 * @param grounds what volume and limit rest on
 */
public record Tube(
    int order,
    double ml,
    double minimumMl,
    List<CsfTest> tests,
    String container,
    String limit,
    Grounds grounds) {

  /** Copies the tests. */
  public Tube {
    tests = List.copyOf(tests);
  }

  /** Whether it is kept for later questions. */
  public boolean isReserve() {
    return tests.isEmpty();
  }
}
