package cistern.puncture.bleeding;

import cistern.fact.Grounds;
import cistern.puncture.guideline.Guideline;
import java.util.List;
import java.util.Optional;

/**
 * What one guideline answers for one drug.
 *
 * @param guideline who says it
 * @param hold hours from the last dose, where it gives them
 * @param restart hours to the next dose, where it gives them
 * @param restartTraumatic the same after a bloody tap, where it differs
 * @param conditions what it asks beside or instead
 * @param rows each row that may be meant, when there are several
 * @param isRead whether it answers from something that was read, and not only that nothing was
 * @param verdict passed, not passed, or ask
 * @param reason why
 * @param grounds what the answer rests on
 */
public record GuidelineAnswer(
    Guideline guideline,
    Optional<Hours> hold,
    Optional<Hours> restart,
    Optional<Hours> restartTraumatic,
    List<String> conditions,
    List<String> rows,
    boolean isRead,
    HoldVerdict verdict,
    String reason,
    Grounds grounds) {

  /** Copies the lists. */
  public GuidelineAnswer {
    conditions = List.copyOf(conditions);
    rows = List.copyOf(rows);
  }
}
