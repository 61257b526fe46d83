package cistern.puncture.specimen;

import cistern.fact.Grounds;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.CsfTest;
import java.util.List;

/**
 * A result on the local list of values that somebody must be told of.
 *
 * @param test where it comes from
 * @param text the value and its limit
 * @param told who was told, with the minutes since the result where both times are known
 * @param grounds what the limit rests on
 */
public record CriticalValue(CsfTest test, String text, List<Telling> told, Grounds grounds) {

  /** Copies the list. */
  public CriticalValue {
    told = List.copyOf(told);
  }

  /** Whether nobody is recorded as told. */
  public boolean isUntold() {
    return told.isEmpty();
  }

  /**
   * Somebody told.
   *
   * @param told who and when
   * @param delay the minutes since the result, in words; empty when a time is missing
   */
  public record Telling(Told told, String delay) {}
}
