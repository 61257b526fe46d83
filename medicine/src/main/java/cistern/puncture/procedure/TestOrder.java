package cistern.puncture.procedure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is to be measured in the fluid.
 *
 * @param question what the puncture is for
 * @param tests asked for, most important first; empty when only the question is given
 * @param template the local order of the tubes, if named
 * @param volumeMl what can be drawn, mL, if limited
 */
public record TestOrder(
    Optional<PunctureQuestion> question,
    List<CsfTest> tests,
    Optional<TubeTemplate> template,
    OptionalDouble volumeMl) {

  /** Nothing asked. */
  public static final TestOrder UNKNOWN =
      new TestOrder(Optional.empty(), List.of(), Optional.empty(), OptionalDouble.empty());

  /** Copies the tests. */
  public TestOrder {
    tests = List.copyOf(tests);
  }
}
