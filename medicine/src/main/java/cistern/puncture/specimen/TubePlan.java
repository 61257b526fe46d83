package cistern.puncture.specimen;

import cistern.fact.Grounds;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.PunctureQuestion;
import cistern.puncture.procedure.TubeTemplate;
import java.util.List;
import java.util.Optional;

/**
 * What to draw, in which order, and what to leave out when the draw is short.
 *
 * @param question what the puncture is for
 * @param template the order in use; there is no standard
 * @param tubes in order of filling
 * @param ranked the tests, most important first
 * @param dropped the tests that the volume does not reach, first left out first
 * @param volumes mL
 * @param notes what to keep in mind while filling
 * @param serum when serum must be taken
 * @param label what the label of a tube holds
 * @param grounds what it rests on
 */
public record TubePlan(
    PunctureQuestion question,
    TubeTemplate template,
    List<Tube> tubes,
    List<CsfTest> ranked,
    List<CsfTest> dropped,
    Volumes volumes,
    List<String> notes,
    String serum,
    List<String> label,
    Grounds grounds) {

  /** Copies the lists. */
  public TubePlan {
    tubes = List.copyOf(tubes);
    ranked = List.copyOf(ranked);
    dropped = List.copyOf(dropped);
    notes = List.copyOf(notes);
    label = List.copyOf(label);
  }

  /** What is left out first when less comes than planned: the least important test. */
  public List<CsfTest> dropFirst() {
    return ranked.reversed();
  }

  /**
   * How much, and how long until it is made again.
   *
   * @param totalMl in the tubes, mL
   * @param minimumMl the least for every test asked for, mL
   * @param availableMl what can be drawn, if limited, mL
   * @param minutes until the total is made again
   */
  public record Volumes(
      double totalMl, double minimumMl, Optional<Double> availableMl, Minutes minutes) {}

  /**
   * Minutes until some fluid is made again.
   *
   * @param least at the fastest production
   * @param middle at the middle one
   * @param most at the slowest
   */
  public record Minutes(double least, double middle, double most) {}
}
