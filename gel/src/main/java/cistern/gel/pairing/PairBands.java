package cistern.gel.pairing;

import java.util.List;

/**
 * What the bands of a pair of lanes say.
 *
 * @param counterpart index of the serum band of each CSF band, −1 for "no counterpart"
 * @param response the serum's answer at the place of each CSF band over that band's height
 * @param csfOnly how many bands only the CSF has
 * @param shared how many bands both have
 * @param serumOnly how many bands only the serum has
 * @param probabilityOfShared that there is a shared band
 * @param isLadder whether the shared bands make a ladder
 * @param probabilityOfOther that the serum is another person's
 */
public record PairBands(
    List<Integer> counterpart,
    List<Double> response,
    CountDistribution csfOnly,
    int shared,
    int serumOnly,
    double probabilityOfShared,
    boolean isLadder,
    double probabilityOfOther) {
  /** Copies the lists. */
  public PairBands {
    counterpart = List.copyOf(counterpart);
    response = List.copyOf(response);
  }

  /** The chance of each of the five patterns, at a least number of CSF-only bands. */
  public List<Double> probabilityOfPattern(int cutOff) {
    double ladder = isLadder ? 0.97 : 0.01 * probabilityOfShared;
    double many = csfOnly.atLeast(cutOff);
    double both = probabilityOfShared;
    double rest = 1 - ladder;
    return List.of(
        rest * (1 - many) * (1 - both),
        rest * many * (1 - both),
        rest * many * both,
        rest * (1 - many) * both,
        ladder);
  }
}
