package cistern.gel;

import java.util.Locale;
import java.util.StringJoiner;

/** True against read patterns, and foretold chances against what was true. */
final class Confusion {
  private static final int NONE = 0;
  private static final int BINS = 6;
  private static final double LEAST = 0.05;
  private final int[][] patterns = new int[6][6];
  private final int[] differences = new int[7];
  private final int[] foretold = new int[BINS];
  private final int[] positive = new int[BINS];
  private final double[] chances = new double[BINS];

  /**
   * @param read the pattern as read, 0 for none
   */
  void pattern(int truth, int read) {
    patterns[truth][read]++;
  }

  /** Counts the difference between the count as read and the true one, −3 to 3 and beyond. */
  void count(int truth, int read) {
    differences[Math.clamp(read - truth, -3, 3) + 3]++;
  }

  /** Counts a chance between 0.05 and 0.95 in its bin. */
  void chance(double p, boolean isPositive) {
    if (p > LEAST && p < 1 - LEAST) {
      int bin = Math.clamp((int) ((p - LEAST) / (1 - 2 * LEAST) * BINS), 0, BINS - 1);
      foretold[bin]++;
      chances[bin] += p;
      positive[bin] += isPositive ? 1 : 0;
    }
  }

  /** Each true pattern with how often it was read as 1 to 5 and as none. */
  String toPatterns() {
    StringJoiner rows = new StringJoiner("; ");
    for (int truth = 1; truth <= 5; truth++) {
      int[] r = patterns[truth];
      rows.add(
          String.format(
              Locale.ROOT,
              "true %d: %d %d %d %d %d, none %d",
              truth,
              r[1],
              r[2],
              r[3],
              r[4],
              r[5],
              r[NONE]));
    }
    return rows.toString();
  }

  /** How often the count was three or more too low, … right, … three or more too high. */
  String toCounts() {
    StringJoiner row = new StringJoiner(" ");
    for (int d : differences) {
      row.add(String.valueOf(d));
    }
    return "read less true, −3 and less to 3 and more: " + row;
  }

  /** For each bin the mean chance, the share that was positive, and how many. */
  String toReliability() {
    StringJoiner bins = new StringJoiner("; ");
    for (int b = 0; b < BINS; b++) {
      int n = Math.max(1, foretold[b]);
      bins.add(
          String.format(
              Locale.ROOT,
              "foretold %.2f, was %.2f, of %d",
              chances[b] / n,
              (double) positive[b] / n,
              foretold[b]));
    }
    return bins.toString();
  }
}
