package cistern.panel;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import java.time.Duration;
import java.util.OptionalDouble;

/**
 * Whether CSF and serum were drawn close enough to compare. Same day, ideally within a few hours:
 * common practice, no source.
 *
 * @param verdict what the interval allows
 * @param hoursApart serum minus CSF in hours, signed, when both times are known
 * @param grounds what the hours rest on
 */
public record Pairing(Verdict verdict, OptionalDouble hoursApart, Grounds grounds) {

  static final String VALID = "pairing.valid-hours";
  static final String DOUBTFUL = "pairing.doubtful-hours";
  private static final double MILLIS_PER_HOUR = 3_600_000;

  /** What the draw interval allows. */
  public enum Verdict {
    VALID("valid"),
    DOUBTFUL("doubtful"),
    INVALID("invalid"),
    UNKNOWN("unknown");

    private final String word;

    Verdict(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /** The pairing of a panel: both ends of an interval belong to it, before or after alike. */
  public static Pairing of(Panel panel, Facts facts) {
    Grounds grounds = facts.grounds(VALID, DOUBTFUL);
    if (panel.csf().at().isEmpty() || panel.serum().at().isEmpty()) {
      return new Pairing(Verdict.UNKNOWN, OptionalDouble.empty(), grounds);
    }
    Duration apart = Duration.between(panel.csf().at().get(), panel.serum().at().get());
    double hours = apart.toMillis() / MILLIS_PER_HOUR;
    return new Pairing(judge(Math.abs(hours), facts), OptionalDouble.of(hours), grounds);
  }

  private static Verdict judge(double hours, Facts facts) {
    if (hours <= facts.number(VALID)) {
      return Verdict.VALID;
    }
    return hours <= facts.number(DOUBTFUL) ? Verdict.DOUBTFUL : Verdict.INVALID;
  }

  /** Whether values of both fluids must not be compared. */
  public boolean isInvalid() {
    return verdict == Verdict.INVALID;
  }
}
