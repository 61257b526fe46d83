package cistern.bands;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What follows from a band report: pattern, verdict and whether a person stands behind it.
 *
 * @param report what was reported
 * @param counts the counts in force
 * @param pattern the pattern in force, where it is known
 * @param verdict at the cut-off
 * @param cutOff CSF-only bands that count as positive
 * @param grounds what the cut-off rests on
 */
public record BandReading(
    BandReport report,
    BandCounts counts,
    Optional<BandPattern> pattern,
    BandVerdict verdict,
    int cutOff,
    Grounds grounds) {

  private static final String CUT_OFF = "bands.cut-off";

  /** The reading of a report under some facts. */
  public static BandReading of(BandReport report, Facts facts) {
    int cutOff = (int) facts.number(CUT_OFF);
    Grounds grounds = facts.grounds(CUT_OFF);
    return switch (report) {
      case BandReport.NotReported none -> unread(none, cutOff, grounds);
      case BandReport.GelNamed named ->
          named.edit().isPresent() ? of(named.edit().get(), facts) : unread(named, cutOff, grounds);
      case BandReport.Counted c ->
          new BandReading(
              c,
              c.counts(),
              ladder(c.pattern()).or(() -> pattern(c.counts(), cutOff)),
              verdict(c.counts().csfOnly(), cutOff),
              cutOff,
              grounds);
      case BandReport.Patterned p ->
          new BandReading(
              p, BandCounts.NONE, Optional.of(p.pattern()), verdict(p.pattern()), cutOff, grounds);
      case BandReport.Concluded c ->
          new BandReading(
              c,
              BandCounts.NONE,
              Optional.empty(),
              c.isPositive() ? BandVerdict.POSITIVE : BandVerdict.NEGATIVE,
              cutOff,
              grounds);
      case BandReport.ReadFromGel g ->
          new BandReading(
              g,
              g.counts(),
              g.pattern(),
              g.pattern().isEmpty()
                  ? BandVerdict.UNDETERMINED
                  : verdict(g.counts().csfOnly(), cutOff),
              cutOff,
              grounds);
    };
  }

  private static BandReading unread(BandReport report, int cutOff, Grounds grounds) {
    return new BandReading(
        report, BandCounts.NONE, Optional.empty(), BandVerdict.UNDETERMINED, cutOff, grounds);
  }

  private static Optional<BandPattern> ladder(Optional<BandPattern> named) {
    return named.filter(p -> p == BandPattern.LADDER);
  }

  /** The pattern that counts amount to; unknown without the count of shared bands. */
  public static Optional<BandPattern> pattern(BandCounts counts, int cutOff) {
    if (counts.csfOnly().isEmpty() || counts.shared().isEmpty()) {
      return Optional.empty();
    }
    boolean isLocal = counts.csfOnly().getAsInt() >= cutOff;
    boolean isShared = counts.shared().getAsInt() > 0;
    if (isLocal) {
      return Optional.of(isShared ? BandPattern.LOCAL_AND_SYSTEMIC : BandPattern.LOCAL);
    }
    return Optional.of(isShared ? BandPattern.SYSTEMIC : BandPattern.NORMAL);
  }

  private static BandVerdict verdict(OptionalInt csfOnly, int cutOff) {
    if (csfOnly.isEmpty()) {
      return BandVerdict.UNDETERMINED;
    }
    int count = csfOnly.getAsInt();
    if (count >= cutOff) {
      return BandVerdict.POSITIVE;
    }
    return count == 0 ? BandVerdict.NEGATIVE : BandVerdict.BORDERLINE;
  }

  private static BandVerdict verdict(BandPattern pattern) {
    return pattern.isLocal() ? BandVerdict.POSITIVE : BandVerdict.NEGATIVE;
  }

  /** Whether anything was reported. */
  public boolean isReported() {
    return !(report instanceof BandReport.NotReported);
  }

  /** Whether a person stands behind it. */
  public boolean isConfirmed() {
    return switch (report) {
      case BandReport.NotReported none -> false;
      case BandReport.GelNamed named -> false;
      case BandReport.Counted counted -> true;
      case BandReport.Patterned patterned -> true;
      case BandReport.Concluded concluded -> true;
      case BandReport.ReadFromGel gel -> gel.confirmedBy().isPresent();
    };
  }

  /** The verdict on a pattern named beside the counts, where counts and pattern differ in it. */
  public Optional<BandPattern> contradictedPattern() {
    if (!(report instanceof BandReport.Counted counted)) {
      return Optional.empty();
    }
    return counted
        .pattern()
        .filter(p -> p != BandPattern.LADDER)
        .filter(p -> verdict == BandVerdict.POSITIVE || verdict == BandVerdict.NEGATIVE)
        .filter(p -> p.isLocal() != (verdict == BandVerdict.POSITIVE));
  }
}
