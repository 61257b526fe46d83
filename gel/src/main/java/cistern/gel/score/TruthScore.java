package cistern.gel.score;

import cistern.bands.BandPattern;
import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.PairReading;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/** How well readings agree with the truth of some gels. */
public final class TruthScore {
  /** How far from the true middle a lane may be found, in its widths. */
  private static final double NEAR = 0.4;

  private static final int BINS = 10;

  private final int cutOff;
  private int gels;
  private int good;
  private int bad;
  private int yes;
  private int exact;
  private int pattern;
  private int patterns;
  private int goodRefused;
  private int badMarked;
  private int unreviewed;
  private int unreviewedRight;
  private int lanes;
  private int placed;
  private int found;
  private int extra;
  private double logScore;
  private final double[] foretold = new double[BINS];
  private final int[] were = new int[BINS];
  private final int[] all = new int[BINS];

  /**
   * A score that has seen nothing yet.
   *
   * @param cutOff CSF-only bands from which a pair is positive
   */
  public TruthScore(int cutOff) {
    this.cutOff = cutOff;
  }

  /** Adds a reading of which the lanes were named. */
  public void addNamed(GelTruth truth, GelReading reading) {
    gels++;
    lanes += truth.places().size();
    placed += matched(truth.places(), full(reading));
    for (GelTruth.Pair pair : truth.pairs()) {
      reading.pairs().stream()
          .filter(p -> p.pair() == pair.pair())
          .findFirst()
          .ifPresentOrElse(p -> pair(pair, p, isPlaced(truth, p, reading)), () -> missing(pair));
    }
  }

  /** Adds a reading of the same gel of which nobody named the lanes. */
  public void addUnaided(GelTruth truth, GelReading reading) {
    int matched = matched(truth.places(), reading.lanes());
    found += matched;
    extra += reading.lanes().size() - matched;
  }

  /** A gel that could not be read at all. */
  public void addUnread(GelTruth truth) {
    gels++;
    lanes += truth.places().size();
    truth.pairs().forEach(this::missing);
  }

  private void missing(GelTruth.Pair truth) {
    if (truth.isGood()) {
      good++;
      goodRefused++;
      logScore += Math.log(2);
    } else {
      bad++;
      badMarked++;
    }
  }

  /** The lanes that hold something. */
  private static List<LaneReading> full(GelReading reading) {
    return reading.lanes().stream().filter(l -> l.kind() != LaneKind.BLANK).toList();
  }

  /** Whether the lanes of a pair lie where they should: else counts are right by accident. */
  private static boolean isPlaced(GelTruth truth, PairReading pair, GelReading reading) {
    return truth.places().isEmpty()
        || truth.names().withoutBlanks().pairs().stream()
            .filter(n -> n.number() == pair.pair())
            .allMatch(
                n ->
                    isNear(truth, n.csf(), pair.csfLane(), reading)
                        && isNear(truth, n.serum(), pair.serumLane(), reading));
  }

  private static boolean isNear(
      GelTruth truth, OptionalInt named, OptionalInt lane, GelReading reading) {
    if (named.isEmpty() || lane.isEmpty() || named.getAsInt() >= truth.places().size()) {
      return false;
    }
    GelTruth.Place place = truth.places().get(named.getAsInt());
    double column = reading.lanes().get(lane.getAsInt()).xCentre();
    return Math.abs(column - place.xCentre()) < NEAR * place.width();
  }

  private static int matched(List<GelTruth.Place> places, List<LaneReading> lanes) {
    boolean[] isUsed = new boolean[lanes.size()];
    int matched = 0;
    for (GelTruth.Place place : places) {
      int best = -1;
      double least = NEAR * place.width();
      for (int i = 0; i < isUsed.length; i++) {
        double d = Math.abs(lanes.get(i).xCentre() - place.xCentre());
        if (!isUsed[i] && d < least) {
          least = d;
          best = i;
        }
      }
      if (best >= 0) {
        isUsed[best] = true;
        matched++;
      }
    }
    return matched;
  }

  private void pair(GelTruth.Pair truth, PairReading read, boolean isPlaced) {
    boolean isRefused = read.pattern().isEmpty();
    if (!truth.isGood()) {
      bad++;
      badMarked += isRefused ? 1 : 0;
      return;
    }
    int count = truth.csfOnly().getAsInt();
    boolean isPositive = count >= cutOff;
    double p = read.counts().map(PairReading.Counts::probabilityPositive).orElse(0.5);
    boolean isRight = isPlaced && read.counts().isPresent() && p >= 0.5 == isPositive;
    good++;
    goodRefused += isRefused ? 1 : 0;
    yes += isRight ? 1 : 0;
    exact += isPlaced && read.counts().filter(c -> c.csfOnly() == count).isPresent() ? 1 : 0;
    unreviewed += read.needsReview() ? 0 : 1;
    unreviewedRight += !read.needsReview() && isRight ? 1 : 0;
    logScore -= Math.log(Math.max(1e-4, isPositive ? p : 1 - p));
    int bin = Math.min(BINS - 1, (int) (p * BINS));
    foretold[bin] += p;
    were[bin] += isPositive ? 1 : 0;
    all[bin]++;
    truth
        .pattern()
        .ifPresent(
            true_ -> {
              patterns++;
              boolean isSame =
                  read.pattern().map(BandPattern::number).filter(n -> n == true_).isPresent();
              pattern += isPlaced && isSame ? 1 : 0;
            });
  }

  private static double share(int part, int whole) {
    return whole == 0 ? 1 : (double) part / whole;
  }

  /** The share of good pairs of which the answer at the cut-off is right. */
  public double yes() {
    return share(yes, good);
  }

  /** The share of the named lanes that lie where they should. */
  public double placed() {
    return share(placed, lanes);
  }

  /** The score in words. */
  public String toText() {
    return String.format(
        Locale.ROOT,
        "%d gels, %d good pairs: yes or no %.3f, exact count %.3f, pattern %.3f;"
            + " not for review %.3f, of these right %.4f; good refused %.3f;"
            + " %d bad pairs, marked %.3f; lanes placed %.3f, unaided %.3f and extra %.3f;"
            + " log score %.3f; foretold and true: %s",
        gels,
        good,
        yes(),
        share(exact, good),
        share(pattern, patterns),
        share(unreviewed, good),
        share(unreviewedRight, unreviewed),
        share(goodRefused, good),
        bad,
        share(badMarked, bad),
        placed(),
        share(found, lanes),
        lanes == 0 ? 0 : (double) extra / lanes,
        logScore / Math.max(1, good),
        reliability());
  }

  private String reliability() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < BINS; i++) {
      if (all[i] > 0) {
        text.append(text.isEmpty() ? "" : ", ")
            .append(
                String.format(
                    Locale.ROOT,
                    "%.2f %.2f of %d",
                    foretold[i] / all[i],
                    share(were[i], all[i]),
                    all[i]));
      }
    }
    return text.toString();
  }
}
