package cistern.cohort;

import cistern.bands.BandVerdict;
import cistern.differential.Proportion;
import cistern.measurement.Answer;
import java.io.Serializable;
import java.util.Optional;

/**
 * How often something happened, did not, or was not recorded.
 *
 * @param yes happened
 * @param no did not
 * @param unknown not recorded
 */
public record Tally(long yes, long no, long unknown) implements Serializable {

  /** Nobody yet. */
  public static final Tally NONE = new Tally(0, 0, 0);

  /** One answer. */
  public static Tally of(Answer answer) {
    return switch (answer) {
      case YES -> new Tally(1, 0, 0);
      case NO -> new Tally(0, 1, 0);
      case UNKNOWN -> new Tally(0, 0, 1);
    };
  }

  /** Whether bands were found; borderline ones are neither found nor absent. */
  static Tally of(BandVerdict bands) {
    return switch (bands) {
      case POSITIVE -> of(Answer.YES);
      case NEGATIVE -> of(Answer.NO);
      case BORDERLINE, UNDETERMINED -> of(Answer.UNKNOWN);
    };
  }

  /** Both together. */
  public Tally merge(Tally other) {
    return new Tally(yes + other.yes, no + other.no, unknown + other.unknown);
  }

  /** The share among those of whom it is known; none when it is known of nobody. */
  public Optional<Proportion> share() {
    return yes + no == 0 ? Optional.empty() : Optional.of(new Proportion(yes, yes + no));
  }
}
