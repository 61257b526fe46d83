package cistern.gel;

import cistern.bands.BandPattern;
import cistern.gel.image.Picture;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.PairReading;
import cistern.gel.synthetic.GelMaker;
import cistern.gel.synthetic.LaneTruth;
import cistern.gel.synthetic.Level;
import cistern.gel.synthetic.PairTruth;
import cistern.gel.synthetic.SyntheticGel;
import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;

/** How well readings agree with the truth of invented gels of one level. */
final class Score {
  private final Level level;
  private final Confusion confusion = new Confusion();
  private int good;
  private int bad;
  private int yes;
  private int counted;
  private int pattern;
  private int goodMarked;
  private int badMarked;
  private int unreviewed;
  private int unreviewedRight;
  private int lanes;
  private int lanesFound;
  private int lanesExtra;
  private double logScore;

  private Score(Level level) {
    this.level = level;
  }

  /** The score over so many gels from a seed on. */
  static Score of(GelReader reader, Level level, long seed, int gels) {
    Score score = new Score(level);
    LongStream.range(seed, seed + gels)
        .parallel()
        .mapToObj(s -> Seen.of(reader, GelMaker.of(level, s)))
        .toList()
        .forEach(
            seen -> {
              score.pairs(seen);
              score.lanes(seen);
            });
    return score;
  }

  /** What is true of a gel, and its readings with and without names. */
  private record Seen(
      List<LaneTruth> lanes, List<PairTruth> pairs, GelReading named, GelReading unaided) {
    static Seen of(GelReader reader, SyntheticGel gel) {
      Picture picture = gel.toPicture();
      return new Seen(
          gel.lanes(),
          gel.pairs(),
          reader.read(picture, "invented", gel.toNames()),
          reader.read(picture, "invented", LanePlan.NONE));
    }
  }

  private void pairs(Seen gel) {
    for (int i = 0; i < gel.pairs().size(); i++) {
      PairTruth truth = gel.pairs().get(i);
      PairReading pair = gel.named().pairs().get(i);
      boolean isMarked = pair.pattern().isEmpty();
      if (truth.isBad()) {
        bad++;
        badMarked += isMarked ? 1 : 0;
      } else {
        good(truth, pair, isMarked);
      }
    }
  }

  private void good(PairTruth truth, PairReading pair, boolean isMarked) {
    boolean isPositive = truth.csfOnly() >= 2;
    double p = pair.counts().map(PairReading.Counts::probabilityPositive).orElse(0.5);
    int count = pair.counts().map(PairReading.Counts::csfOnly).orElse(0);
    confusion.pattern(truth.pattern(), pair.pattern().map(BandPattern::number).orElse(0));
    confusion.chance(p, isPositive);
    boolean isRight = pair.counts().isPresent() && p > 0.5 == isPositive;
    good++;
    yes += isRight ? 1 : 0;
    logScore -= Math.log(Math.max(1e-6, isPositive ? p : 1 - p));
    unreviewed += pair.needsReview() ? 0 : 1;
    unreviewedRight += !pair.needsReview() && isRight ? 1 : 0;
    goodMarked += isMarked ? 1 : 0;
    if (!isMarked) {
      confusion.count(truth.csfOnly(), count);
      counted += count == truth.csfOnly() ? 1 : 0;
      pattern += pair.pattern().orElseThrow().number() == truth.pattern() ? 1 : 0;
    }
  }

  private void lanes(Seen gel) {
    GelReading reading = gel.unaided();
    int matched = 0;
    for (int i = 0; i < gel.lanes().size(); i++) {
      LaneTruth truth = gel.lanes().get(i);
      int lane = i;
      boolean isEmptied =
          gel.pairs().stream()
              .anyMatch(
                  p ->
                      p.kind() == PairTruth.Case.UNREADABLE
                          && (p.csfLane() == lane || p.serumLane() == lane));
      boolean isFound =
          reading.lanes().stream()
              .map(LaneReading::xCentre)
              .anyMatch(x -> Math.abs(x - truth.xCentre()) < truth.width() / 4);
      matched += isFound ? 1 : 0;
      lanes += isEmptied ? 0 : 1;
      lanesFound += !isEmptied && isFound ? 1 : 0;
    }
    lanesExtra += Math.max(0, reading.lanes().size() - matched);
  }

  private static double share(int part, int whole) {
    return whole == 0 ? 1 : (double) part / whole;
  }

  double yes() {
    return share(yes, good);
  }

  double count() {
    return share(counted, good - goodMarked);
  }

  Confusion confusion() {
    return confusion;
  }

  double pattern() {
    return share(pattern, good - goodMarked);
  }

  double found() {
    return share(lanesFound, lanes);
  }

  int pairsRead() {
    return good + bad;
  }

  String toText() {
    return String.format(
        Locale.ROOT,
        "%s: %d good pairs, yes/no %.4f, count %.4f, pattern %.4f, good marked %.4f;"
            + " %d bad pairs, marked %.4f; not for review %.4f, of these right %.4f;"
            + " lanes found %.4f, extra %.4f; log score %.4f",
        level.name().toLowerCase(Locale.ROOT),
        good,
        yes(),
        count(),
        pattern(),
        share(goodMarked, good),
        bad,
        share(badMarked, bad),
        share(unreviewed, good),
        share(unreviewedRight, unreviewed),
        found(),
        share(lanesExtra, lanes),
        logScore / Math.max(1, good));
  }
}
