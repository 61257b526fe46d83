package cistern.puncture.bleeding;

import cistern.puncture.procedure.Antithrombotic;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One antithrombotic against every guideline, side by side.
 *
 * @param taken the drug as taken
 * @param hours from the last dose to the planned puncture, when known and not negative
 * @param answers one a guideline, never averaged
 * @param disagree whether the guidelines that answer do not agree
 */
public record AntithromboticPlan(
    Antithrombotic taken, OptionalDouble hours, List<GuidelineAnswer> answers, boolean disagree) {

  /** Copies the answers. */
  public AntithromboticPlan {
    answers = List.copyOf(answers);
  }
}
