package cistern.puncture.headache;

import cistern.measurement.Answer;
import cistern.puncture.procedure.WarningSign;
import java.util.List;

/**
 * What a headache after a puncture amounts to, danger first.
 *
 * @param redFlags every question, most urgent first
 * @param conclusion what the red flags say; never that there is no danger
 * @param definitions published definitions, met or not
 */
public record HeadacheAssessment(
    List<RedFlagAnswer> redFlags, String conclusion, List<Definition> definitions) {

  /** Copies the lists. */
  public HeadacheAssessment {
    redFlags = List.copyOf(redFlags);
    definitions = List.copyOf(definitions);
  }

  /** The dangers with a yes, most urgent first. */
  public List<RedFlagAnswer> present() {
    return redFlags.stream().filter(RedFlagAnswer::isPresent).toList();
  }

  /** The questions nobody has answered. */
  public List<WarningSign> open() {
    return redFlags.stream().flatMap(f -> f.with(Answer.UNKNOWN).stream()).distinct().toList();
  }
}
