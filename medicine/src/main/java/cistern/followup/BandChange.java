package cistern.followup;

import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.bands.BandVerdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Bands at two punctures.
 *
 * @param from the earlier reading
 * @param to the later reading
 * @param gained CSF-only bands more than before, net, when both are counted
 * @param lost CSF-only bands fewer than before, net, when both are counted
 * @param verdict what the two amount to
 * @param chances what the reader's uncertainty leaves open, when a gel was read
 */
public record BandChange(
    BandReading from,
    BandReading to,
    OptionalInt gained,
    OptionalInt lost,
    Verdict verdict,
    Optional<Chances> chances) {

  /** What two readings amount to. */
  public enum Verdict {
    PERSISTENT("persistent"),
    GAINED("gained"),
    LOST("lost"),
    NOT_DEMONSTRATED("not-demonstrated"),
    BORDERLINE("borderline"),
    /** The result changed and so did the method. */
    METHOD_CHANGED("method-changed"),
    UNDETERMINED("undetermined");

    private final String word;

    Verdict(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /**
   * Chances from reading the gel alone, 0 to 1; a count by a person is taken as read.
   *
   * @param more of more CSF-only bands than before
   * @param fewer of fewer CSF-only bands than before
   */
  public record Chances(double more, double fewer) {}

  static BandChange of(BandReading from, BandReading to) {
    OptionalInt before = from.counts().csfOnly();
    OptionalInt after = to.counts().csfOnly();
    boolean isCounted = before.isPresent() && after.isPresent();
    int net = isCounted ? after.getAsInt() - before.getAsInt() : 0;
    return new BandChange(
        from,
        to,
        isCounted ? OptionalInt.of(Math.max(0, net)) : OptionalInt.empty(),
        isCounted ? OptionalInt.of(Math.max(0, -net)) : OptionalInt.empty(),
        verdict(from, to),
        chances(from, to));
  }

  private static Verdict verdict(BandReading from, BandReading to) {
    Verdict result = result(from.verdict(), to.verdict());
    boolean isChange = result == Verdict.GAINED || result == Verdict.LOST;
    return isChange && isMethodChanged(from, to) ? Verdict.METHOD_CHANGED : result;
  }

  /** A fall to a single band counts as lost, as in the published series. */
  private static Verdict result(BandVerdict from, BandVerdict to) {
    if (from == BandVerdict.UNDETERMINED || to == BandVerdict.UNDETERMINED) {
      return Verdict.UNDETERMINED;
    }
    if (from == BandVerdict.POSITIVE) {
      return to == BandVerdict.POSITIVE ? Verdict.PERSISTENT : Verdict.LOST;
    }
    if (to == BandVerdict.POSITIVE) {
      return Verdict.GAINED;
    }
    return from == BandVerdict.NEGATIVE && to == BandVerdict.NEGATIVE
        ? Verdict.NOT_DEMONSTRATED
        : Verdict.BORDERLINE;
  }

  /** Whether both methods are stated and differ. */
  public boolean isMethodChanged() {
    return isMethodChanged(from, to);
  }

  private static boolean isMethodChanged(BandReading from, BandReading to) {
    Optional<String> first = method(from.report());
    Optional<String> second = method(to.report());
    return first.isPresent() && second.isPresent() && !first.equals(second);
  }

  /** The method as stated. */
  public static Optional<String> method(BandReport report) {
    return switch (report) {
      case BandReport.NotReported none -> Optional.empty();
      case BandReport.GelNamed named -> Optional.empty();
      case BandReport.Counted counted -> counted.origin().method();
      case BandReport.Patterned patterned -> patterned.origin().method();
      case BandReport.Concluded concluded -> concluded.origin().method();
      case BandReport.ReadFromGel gel -> Optional.empty();
    };
  }

  private static Optional<Chances> chances(BandReading from, BandReading to) {
    List<Double> first = distribution(from);
    List<Double> second = distribution(to);
    boolean isRead = isFromGel(from) || isFromGel(to);
    if (!isRead || first.isEmpty() || second.isEmpty()) {
      return Optional.empty();
    }
    double more = 0;
    double fewer = 0;
    for (int before = 0; before < first.size(); before++) {
      for (int after = 0; after < second.size(); after++) {
        double both = first.get(before) * second.get(after);
        more += after > before ? both : 0;
        fewer += after < before ? both : 0;
      }
    }
    return Optional.of(new Chances(more, fewer));
  }

  private static boolean isFromGel(BandReading reading) {
    return reading.report() instanceof BandReport.ReadFromGel;
  }

  /** Entry k is the chance of k bands; a count by a person is certain. */
  private static List<Double> distribution(BandReading reading) {
    if (reading.report() instanceof BandReport.ReadFromGel gel) {
      return gel.csfOnlyDistribution();
    }
    OptionalInt count = reading.counts().csfOnly();
    if (count.isEmpty()) {
      return List.of();
    }
    List<Double> certain = new java.util.ArrayList<>();
    for (int k = 0; k < count.getAsInt(); k++) {
      certain.add(0.0);
    }
    certain.add(1.0);
    return certain;
  }
}
