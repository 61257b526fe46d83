package cistern.gel.bands;

/**
 * Finds how bands run across a lane: the bend along which the groups' filter answers agree best.
 */
final class Straightening {
  private static final double[] SLOPE = SavitzkyGolay.weights(1, 2, 1);
  private static final double[] BEND = SavitzkyGolay.weights(1, 2, 2);
  private final float[][] answers;
  private final double[] offsets;
  private final double half;

  /**
   * @param filter a band filter near the gel's band width
   * @param cap filter answers above it count as it, so that one strong band does not decide alone
   * @param margin rows at either end that don't count, where labels are
   */
  Straightening(LaneGroups groups, BandFilter filter, double cap, double margin) {
    this.offsets = groups.offsets();
    this.half = Math.max(1, -offsets[0]);
    this.answers = new float[groups.count()][];
    for (int k = 0; k < answers.length; k++) {
      float[] a = filter.apply(groups.profiles()[k]);
      for (int y = 0; y < a.length; y++) {
        boolean isAtEnd = Math.min(y, a.length - 1 - y) < margin;
        a[y] = isAtEnd ? 0 : (float) Math.clamp(a[y], -0.3 * cap, cap);
      }
      answers[k] = a;
    }
  }

  /**
   * @param steepest largest slope looked for, rows per column
   */
  Bend search(double steepest) {
    double step = Math.min(0.5, steepest * half / 2) / half;
    int n = (int) Math.ceil(steepest / step);
    double[] energies = new double[2 * n + 1];
    int best = n;
    for (int i = 0; i <= 2 * n; i++) {
      energies[i] = energy((i - n) * step, 0);
      best = energies[i] > energies[best] ? i : best;
    }
    double slope = (best - n) * step + step * peak(energies, best);
    double bow = 0.5 / (half * half);
    double[] bows = new double[9];
    int most = 4;
    for (int j = 0; j < 9; j++) {
      bows[j] = energy(slope, (j - 4) * bow);
      most = bows[j] > bows[most] * 1.001 ? j : most;
    }
    double curve = (most - 4) * bow + bow * peak(bows, most);
    java.util.Arrays.sort(energies);
    double weight = energies[2 * n] / Math.max(1e-12, energies[n]) - 1;
    return new Bend(slope, curve, Math.max(0, weight), 0);
  }

  /** Where the top of the parabola through a value and its two neighbours lies, −½…½ steps off. */
  private static double peak(double[] e, int i) {
    if (i == 0 || i == e.length - 1) {
      return 0;
    }
    double slope = 0;
    double bend = 0;
    for (int k = 0; k < 3; k++) {
      slope += SLOPE[k] * e[i - 1 + k];
      bend += BEND[k] * e[i - 1 + k];
    }
    return bend < 0 ? Math.clamp(-slope / bend, -0.5, 0.5) : 0;
  }

  /** The energy of the groups' sum along a bend. */
  private double energy(double slope, double curve) {
    int rows = answers[0].length;
    float[] sum = new float[rows];
    for (int k = 0; k < answers.length; k++) {
      int shift = (int) Math.round(offsets[k] * (slope + curve * offsets[k]));
      int from = Math.max(0, -shift);
      int to = Math.min(rows, rows - shift);
      float[] a = answers[k];
      for (int y = from; y < to; y++) {
        sum[y] += a[y + shift];
      }
    }
    double energy = 0;
    for (float v : sum) {
      energy += v * v;
    }
    return energy;
  }
}
