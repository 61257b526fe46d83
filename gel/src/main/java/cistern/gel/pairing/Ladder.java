package cistern.gel.pairing;

import java.util.List;

/**
 * The ladder of a monoclonal immunoglobulin: bands of both lanes at equal distances.
 *
 * @param fewest least number of rungs
 * @param share least share of the serum's bands that are rungs
 * @param widest distance of rungs beyond which more evenness is asked, in σ of a band
 * @param farthest greatest distance of rungs, in σ of a band
 * @param uneven greatest deviation of a distance from their mean, as a share of it
 * @param evenWide the same where rungs lie farther apart than that
 */
public record Ladder(
    int fewest, double share, double widest, double farthest, double uneven, double evenWide) {

  /**
   * Whether shared bands make a ladder.
   *
   * @param shared rows of the shared bands in the serum lane, ascending
   * @param serumBands how many bands the serum lane has
   */
  boolean isLadder(List<Double> shared, int serumBands, double sigma) {
    int longest = 0;
    for (int from = 0; from + 1 < shared.size(); from++) {
      for (int to = from + fewest - 1; to < shared.size(); to++) {
        if (isEven(shared.subList(from, to + 1), sigma)) {
          longest = Math.max(longest, to - from + 1);
        }
      }
    }
    return longest >= fewest && longest >= share * serumBands;
  }

  private boolean isEven(List<Double> rungs, double sigma) {
    double step = (rungs.getLast() - rungs.getFirst()) / (rungs.size() - 1);
    if (step > farthest * sigma) {
      return false;
    }
    double most = step > widest * sigma ? evenWide : uneven;
    for (int i = 1; i < rungs.size(); i++) {
      double gap = rungs.get(i) - rungs.get(i - 1);
      if (Math.abs(gap - step) > most * step + 0.25 * sigma) {
        return false;
      }
    }
    return true;
  }
}
