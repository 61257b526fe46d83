package cistern.gel.pairing;

import cistern.gel.reading.KeptBands;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.PairReading;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the program's chances of a pair become by a person's edit. A struck band has the chance 0, a
 * drawn one 1, every other keeps its own; so does what the program half saw and did not list.
 *
 * @param csfOnly how likely each number of CSF-only bands is
 * @param patterns the chance of each of the five, at the cut-off in force
 */
public record KeptChances(CountDistribution csfOnly, List<Double> patterns) {
  /** The chance from which a pair was read as a ladder. */
  private static final double LADDER_READ = 0.5;

  /** What no band is nearer to being certain than, in its weight among the shared ones. */
  private static final double LEAST_DOUBT = 1e-6;

  /** Copies the chances. */
  public KeptChances {
    patterns = List.copyOf(patterns);
  }

  /**
   * The chances of a pair that was edited.
   *
   * @param read the chances as the program gave them
   * @param before both lanes as they were read
   * @param now the same with the drawn bands behind the others, and what is struck
   * @param ladder the chance of a ladder in the person's judgement; empty where it is the program's
   * @param cutOff in force
   */
  public static KeptChances of(
      PairReading.Counts read, KeptBands before, KeptBands now, OptionalDouble ladder, int cutOff) {
    CountDistribution csfOnly = new CountDistribution(read.csfOnlyDistribution());
    List<BandMark> bands = now.csf().bands();
    for (int i = 0; i < bands.size(); i++) {
      boolean wasAlone = isRead(before, i) && isAlone(before, i);
      boolean isAlone = now.isKept(now.csf(), i) && !now.isShared(now.csf(), i);
      double chance = Math.clamp(bands.get(i).probability(), 0, 1);
      if (wasAlone && !isAlone) {
        csfOnly = csfOnly.without(chance);
      } else if (isAlone && !wasAlone) {
        csfOnly = csfOnly.with(chance);
      }
    }
    double sharedRead = shared(read);
    double both = 1 - Math.pow(1 - sharedRead, left(before, now)) * drawn(before, now);
    double asRead = read.probabilityOfPattern().getLast();
    double follows = asRead < LADDER_READ && sharedRead > 0 ? asRead * both / sharedRead : asRead;
    double many = csfOnly.atLeast(cutOff);
    return new KeptChances(csfOnly, PairAnswer.patterns(many, both, ladder.orElse(follows)));
  }

  private static boolean isRead(KeptBands before, int band) {
    return band < before.csf().bands().size();
  }

  private static boolean isAlone(KeptBands before, int band) {
    return before.csf().bands().get(band).matched().isEmpty();
  }

  /** The chance of a shared band: patterns 3 and 4 among those that are no ladder. */
  private static double shared(PairReading.Counts read) {
    List<Double> p = read.probabilityOfPattern();
    double rest = p.get(0) + p.get(1) + p.get(2) + p.get(3);
    return rest > 0 ? Math.clamp((p.get(2) + p.get(3)) / rest, 0, 1) : 0;
  }

  /**
   * How much is left of what speaks for shared bands, 1 for all of it. The doubt that there is none
   * is a product over the bands; each has a part in its logarithm as its own doubt has.
   */
  private static double left(KeptBands before, KeptBands now) {
    double all = 0;
    double left = 0;
    for (int i = 0; i < before.csf().bands().size(); i++) {
      if (!isAlone(before, i)) {
        double doubt = 1 - before.csf().bands().get(i).probability();
        double weight = -Math.log(Math.clamp(doubt, LEAST_DOUBT, 1));
        all += weight;
        left += now.isShared(now.csf(), i) ? weight : 0;
      }
    }
    return all > 0 ? left / all : 1;
  }

  /** The doubt that remains of shared bands of which the person drew one half or both. */
  private static double drawn(KeptBands before, KeptBands now) {
    double doubt = 1;
    for (int i = 0; i < now.csf().bands().size(); i++) {
      boolean wasShared = isRead(before, i) && !isAlone(before, i);
      if (!wasShared && now.isShared(now.csf(), i)) {
        doubt *= 1 - now.csf().bands().get(i).probability() * counterpart(now, i);
      }
    }
    return doubt;
  }

  private static double counterpart(KeptBands now, int band) {
    LaneReading serum = now.serum();
    OptionalInt matched = now.csf().bands().get(band).matched();
    return matched.isPresent() ? serum.bands().get(matched.getAsInt()).probability() : 0;
  }
}
