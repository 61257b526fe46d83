package cistern.puncture.bleeding;

import cistern.fact.Grounds;
import cistern.puncture.guideline.Guideline;

/**
 * What one guideline says of one clotting value.
 *
 * @param test what was measured
 * @param guideline who says it
 * @param standing how the value stands
 * @param text its limits and what it says outside them
 * @param grounds what it rests on
 */
public record ThresholdAnswer(
    ClottingTest test, Guideline guideline, Standing standing, String text, Grounds grounds) {

  /** How a value stands to a guideline's limit. */
  public enum Standing {
    CLEAR("clear"),
    /** Between its limits: it leaves the decision open. */
    BETWEEN("between"),
    OUTSIDE("outside"),
    ASK("ask");

    private final String word;

    Standing(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }
}
