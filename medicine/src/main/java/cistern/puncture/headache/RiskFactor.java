package cistern.puncture.headache;

import cistern.fact.Grounds;
import java.util.OptionalDouble;

/**
 * One thing that bears on the risk of headache.
 *
 * @param code the name in files
 * @param term what it is
 * @param state present, not-present, unknown, not-applicable or advisory
 * @param oddsRatio by which the odds are multiplied, when it counts
 * @param note where the figure comes from or why it does not count
 * @param grounds what it rests on
 */
public record RiskFactor(
    String code, String term, State state, OptionalDouble oddsRatio, String note, Grounds grounds) {

  /** How a factor stands. */
  public enum State {
    PRESENT("present"),
    NOT_PRESENT("not-present"),
    /** Widens the band: counted with and without. */
    UNKNOWN("unknown"),
    /** Does not apply to this needle, or is covered by a larger factor. */
    NOT_APPLICABLE("not-applicable"),
    /** Said, not counted. */
    ADVISORY("advisory");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }
}
