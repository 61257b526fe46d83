package cistern.puncture.headache;

import cistern.measurement.Answer;
import cistern.puncture.procedure.RedFlag;
import java.util.List;

/**
 * What a headache after a puncture amounts to, danger first.
 *
 * @param redFlags every question, most urgent first
 * @param conclusion what the red flags say; never that there is no danger
 * @param definitions published definitions, met or not
 * @param steps what can be considered next
 * @param other what else it could be, when the pattern has changed; may be empty
 */
public record HeadacheAssessment(
    List<RedFlagAnswer> redFlags,
    String conclusion,
    List<Definition> definitions,
    List<Step> steps,
    String other) {

  /** Copies the lists. */
  public HeadacheAssessment {
    redFlags = List.copyOf(redFlags);
    definitions = List.copyOf(definitions);
    steps = List.copyOf(steps);
  }

  /** The dangers with a yes, most urgent first. */
  public List<RedFlagAnswer> present() {
    return redFlags.stream().filter(RedFlagAnswer::isPresent).toList();
  }

  /** The questions nobody has answered. */
  public List<RedFlag> open() {
    return redFlags.stream().flatMap(f -> f.with(Answer.UNKNOWN).stream()).toList();
  }
}
