package cistern.gel.pairing;

import cistern.gel.bands.Band;
import java.util.Arrays;
import java.util.List;

/**
 * Which band of the serum lane is the counterpart of which band of the CSF lane: pairs in the same
 * order in both lanes with the greatest sum of gains, where no pair is forced.
 *
 * <p>counterpart: index of the serum band of each CSF band, −1 for "no counterpart"
 *
 * <p>gains: log odds of each CSF band's counterpart
 */
final class Matching {
  private final int[] counterpart;
  private final double[] gains;

  Matching(int[] counterpart, double[] gains) {
    this.counterpart = counterpart;
    this.gains = gains;
  }

  int[] counterpart() {
    return counterpart;
  }

  double[] gains() {
    return gains;
  }

  private static final int NONE = -1;

  /**
   * @param spread standard deviation of the distance of counterparts, rows
   * @param top gain of counterparts that lie on each other
   */
  static Matching of(List<Band> csf, List<Band> serum, Alignment a, double spread, double top) {
    int n = csf.size();
    int m = serum.size();
    double[][] gain = new double[n][m];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < m; j++) {
        gain[i][j] = gain(csf.get(i), serum.get(j), a, spread, top);
      }
    }
    return trace(gain, n, m);
  }

  private static double gain(Band c, Band s, Alignment a, double spread, double top) {
    double d = (a.toSerum(c.y()) - s.y()) / spread;
    double ratio = Math.log(s.height() / c.height());
    return top - 0.5 * d * d - 0.25 * ratio * ratio;
  }

  private static Matching trace(double[][] gain, int n, int m) {
    double[][] best = new double[n + 1][m + 1];
    for (int i = 1; i <= n; i++) {
      for (int j = 1; j <= m; j++) {
        double pair = best[i - 1][j - 1] + Math.max(0, gain[i - 1][j - 1]);
        best[i][j] = Math.max(pair, Math.max(best[i - 1][j], best[i][j - 1]));
      }
    }
    int[] counterpart = new int[n];
    double[] gains = new double[n];
    Arrays.fill(counterpart, NONE);
    int i = n;
    int j = m;
    while (i > 0 && j > 0) {
      if (best[i][j] == best[i - 1][j]) {
        i--;
      } else if (best[i][j] == best[i][j - 1]) {
        j--;
      } else {
        i--;
        j--;
        counterpart[i] = j;
        gains[i] = gain[i][j];
      }
    }
    return new Matching(counterpart, gains);
  }

  boolean isMatched(int csfBand) {
    return counterpart[csfBand] != NONE;
  }
}
