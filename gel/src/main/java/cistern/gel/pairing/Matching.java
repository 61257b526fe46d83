package cistern.gel.pairing;

import cistern.gel.bands.Band;
import cistern.gel.bands.PairBands;
import java.util.Arrays;
import java.util.List;

/**
 * Which bands of the CSF have a counterpart in the serum: pairs in order from the top, each as near
 * as the shift between the two lanes allows.
 *
 * @param serumOf index of the serum band of each CSF band, −1 for none
 */
public record Matching(List<Integer> serumOf) {
  /** Rows of the strip by which counterparts usually miss each other, once lanes are aligned. */
  private static final double SPREAD = 4;

  /** What is lost in gain over a miss as wide as the spread. */
  private static final double MISS = 0.25;

  /** What two bands are worth to each other that are no counterparts. */
  private static final double NONE = -1;

  /** Copies the list. */
  public Matching {
    serumOf = List.copyOf(serumOf);
  }

  /** The matching of a pair's bands. */
  public static Matching of(PairBands pair) {
    List<Band> csf = pair.csf();
    List<Band> serum = pair.serum();
    int n = csf.size();
    int m = serum.size();
    double[][] best = new double[n + 1][m + 1];
    for (int i = 1; i <= n; i++) {
      for (int j = 1; j <= m; j++) {
        double both = best[i - 1][j - 1] + gain(pair, csf.get(i - 1), serum.get(j - 1));
        best[i][j] = Math.max(both, Math.max(best[i - 1][j], best[i][j - 1]));
      }
    }
    Integer[] of = new Integer[n];
    Arrays.fill(of, -1);
    int i = n;
    int j = m;
    while (i > 0 && j > 0) {
      if (best[i][j] == best[i - 1][j]) {
        i--;
      } else if (best[i][j] == best[i][j - 1]) {
        j--;
      } else {
        of[--i] = --j;
      }
    }
    return new Matching(List.of(of));
  }

  /** Whether a CSF band is likely real and has a counterpart. */
  boolean isShared(PairBands bands, int csfBand) {
    boolean isMet = serumOf.get(csfBand) >= 0;
    return isMet && bands.csf().get(csfBand).isLikely();
  }

  /** What it is worth that two bands are counterparts; nothing when one is likely alone. */
  private static double gain(PairBands pair, Band c, Band s) {
    double d = pair.alignment().distance(c.row(), s.row()) / SPREAD;
    double worth = (1 - c.alone()) * Math.max(NONE, 1 - MISS * d * d) * s.probability();
    return c.alone() > Band.LIKELY || s.probability() < Band.SUSPECTED ? NONE : worth;
  }
}
