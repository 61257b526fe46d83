package cistern.puncture.bleeding;

import cistern.fact.Grounds;
import cistern.puncture.guideline.Voice;
import java.util.List;
import java.util.Optional;

/**
 * What one guideline answers for one drug.
 *
 * @param voice who says it
 * @param hold hours from the last dose, where it gives them
 * @param restart hours to the next dose, where it gives them
 * @param restartTraumatic the same after a bloody tap, where it differs
 * @param conditions what it asks beside or instead
 * @param reply passed, not passed, or ask
 * @param reason why
 * @param grounds what the answer rests on
 */
public record GuidelineAnswer(
    Voice voice,
    Optional<Hours> hold,
    Optional<Hours> restart,
    Optional<Hours> restartTraumatic,
    List<String> conditions,
    Reply reply,
    String reason,
    Grounds grounds) {

  /** Copies the conditions. */
  public GuidelineAnswer {
    conditions = List.copyOf(conditions);
  }
}
