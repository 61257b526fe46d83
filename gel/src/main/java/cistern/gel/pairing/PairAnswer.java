package cistern.gel.pairing;

import cistern.gel.bands.Band;
import cistern.gel.bands.PairBands;
import java.util.ArrayList;
import java.util.List;

/**
 * What the bands of a pair of lanes say.
 *
 * @param matching counterparts of the CSF bands
 * @param csfOnly how many bands only the CSF has
 * @param shared how many bands both have
 * @param serumOnly how many bands only the serum has
 * @param probabilityOfShared that there is a shared band
 * @param isLadder whether the shared bands make a ladder
 */
public record PairAnswer(
    Matching matching,
    CountDistribution csfOnly,
    int shared,
    int serumOnly,
    double probabilityOfShared,
    boolean isLadder) {
  /** How many counts the net tells at once: 0, 1, 2, and 3 or more. */
  private static final int SAID = 4;

  /** How much of a band of the CSF is shared that has no counterpart, and may have one unseen. */
  private static final double UNMET = 0.5;

  /** The chance of a ladder where its rungs are seen, and where bands are shared without. */
  private static final double LADDER = 0.97;

  private static final double NO_LADDER = 0.01;

  /** Full width at half maximum of a Gaussian, in σ. */
  private static final double WIDTH_IN_SIGMA = 2.355;

  /** The answer of a pair, under the rules for a ladder. */
  public static PairAnswer of(PairBands bands, Ladder ladder) {
    Matching matching = Matching.of(bands);
    double[] said = new double[SAID];
    for (int k = 0; k < SAID; k++) {
      said[k] = bands.maps().count(k);
    }
    List<Double> rungs = new ArrayList<>();
    double none = 1;
    for (int i = 0; i < bands.csf().size(); i++) {
      Band c = bands.csf().get(i);
      none *= 1 - c.probability() * (1 - c.alone()) * (matching.serumOf().get(i) < 0 ? UNMET : 1);
      if (matching.isShared(bands, i)) {
        rungs.add(bands.serum().get(matching.serumOf().get(i)).y());
      }
    }
    return new PairAnswer(
        matching,
        CountDistribution.of(bands.own()).drawnTo(said),
        rungs.size(),
        alone(bands, matching),
        1 - none,
        ladder.isLadder(rungs, likely(bands.serum()), sigma(bands.serum())));
  }

  private static int likely(List<Band> bands) {
    return (int) bands.stream().filter(Band::isLikely).count();
  }

  /** σ of a Gaussian as wide as the usual band. */
  private static double sigma(List<Band> bands) {
    return Band.usualHeight(bands, 1).orElse(WIDTH_IN_SIGMA) / WIDTH_IN_SIGMA;
  }

  /** The likely bands of the serum that have no counterpart and no answer in the CSF. */
  private static int alone(PairBands bands, Matching matching) {
    int alone = 0;
    for (int j = 0; j < bands.serum().size(); j++) {
      Band s = bands.serum().get(j);
      boolean isMet = matching.serumOf().contains(j);
      alone += s.isLikely() && !isMet && s.alone() >= Band.LIKELY ? 1 : 0;
    }
    return alone;
  }

  /** The chance of each of the five patterns, at a least number of CSF-only bands. */
  public List<Double> probabilityOfPattern(int cutOff) {
    double ladder = isLadder ? LADDER : NO_LADDER * probabilityOfShared;
    return patterns(csfOnly.atLeast(cutOff), probabilityOfShared, ladder);
  }

  /**
   * The chance of each of the five patterns.
   *
   * @param many the chance of CSF-only bands at or over the cut-off
   * @param both the chance of a shared band
   * @param ladder the chance of a ladder
   */
  static List<Double> patterns(double many, double both, double ladder) {
    double rest = 1 - ladder;
    return List.of(
        rest * (1 - many) * (1 - both),
        rest * many * (1 - both),
        rest * many * both,
        rest * (1 - many) * both,
        ladder);
  }
}
