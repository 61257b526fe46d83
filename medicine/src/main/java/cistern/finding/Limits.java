package cistern.finding;

import cistern.measurement.Interval;
import java.util.Optional;

/**
 * The cuts that turn a value into a verdict.
 *
 * @param within where {@code below} ends, if values can be too low
 * @param borderline where {@code borderline} begins, if there is a grey zone
 * @param above where {@code above} begins, if values can be too high
 */
public record Limits(
    Optional<Threshold> within, Optional<Threshold> borderline, Optional<Threshold> above) {

  /** No limit known: every verdict is undetermined. */
  public static final Limits NONE =
      new Limits(Optional.empty(), Optional.empty(), Optional.empty());

  /** Only an upper limit. */
  public static Limits upper(Threshold above) {
    return new Limits(Optional.empty(), Optional.empty(), Optional.of(above));
  }

  /** Only a lower limit: below when strictly under it. */
  public static Limits lower(double lower) {
    return new Limits(Optional.of(Threshold.from(lower)), Optional.empty(), Optional.empty());
  }

  /** An upper limit with a grey zone under it. */
  public static Limits grey(Threshold borderline, Threshold above) {
    return new Limits(Optional.empty(), Optional.of(borderline), Optional.of(above));
  }

  /** These limits with a lower one: below when strictly under it. */
  public Limits withLower(double lower) {
    return new Limits(Optional.of(Threshold.from(lower)), borderline, above);
  }

  /** Whether any limit is known. */
  public boolean isKnown() {
    return within.isPresent() || above.isPresent();
  }

  /** The verdict on a value: it stands when both ends of a censored value give the same word. */
  public Verdict judge(Interval value) {
    return judge(value, this);
  }

  /**
   * The verdict when the limits move with the value: these limits hold at the value's lower end,
   * the others at its upper end.
   */
  public Verdict judge(Interval value, Limits atUpper) {
    if (!value.censored()) {
      return at(value.lower(), Approach.EXACT);
    }
    Verdict low = at(value.lower(), Approach.FROM_ABOVE);
    Verdict high = atUpper.at(value.upper(), Approach.FROM_BELOW);
    return low == high ? low : Verdict.UNDETERMINED;
  }

  private Verdict at(double value, Approach approach) {
    if (!isKnown()) {
      return Verdict.UNDETERMINED;
    }
    if (isPassed(above, value, approach)) {
      return Verdict.ABOVE;
    }
    if (isPassed(borderline, value, approach)) {
      return Verdict.BORDERLINE;
    }
    return within.isPresent() && !isPassed(within, value, approach)
        ? Verdict.BELOW
        : Verdict.WITHIN;
  }

  private static boolean isPassed(Optional<Threshold> cut, double value, Approach approach) {
    return cut.isPresent() && cut.get().isPassedBy(value, approach);
  }
}
