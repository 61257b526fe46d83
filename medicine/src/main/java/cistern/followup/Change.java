package cistern.followup;

import cistern.fact.Grounds;
import cistern.measurement.Interval;
import java.util.Optional;

/**
 * One value at two punctures.
 *
 * @param code the finding or sample
 * @param term its name in sentences
 * @param from the earlier value
 * @param to the later value
 * @param limits by how much it may differ from variation alone, when known
 * @param verdict how the change stands to the limits
 * @param note why it does not compare, or what to keep in mind; may be empty
 * @param grounds what the limits rest on
 */
public record Change(
    String code,
    String term,
    Optional<Interval> from,
    Optional<Interval> to,
    Optional<ChangeLimits> limits,
    Verdict verdict,
    String note,
    Grounds grounds) {

  /** How a change stands. */
  public enum Verdict {
    SIGNIFICANT("significant"),
    WITHIN_VARIATION("within-variation"),
    NOT_COMPARABLE("not-comparable");

    private final String word;

    Verdict(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }
}
