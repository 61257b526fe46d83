package cistern.cohort;

/** Quantiles of sorted values. */
final class Quantiles {

  private Quantiles() {}

  /**
   * The (n + 1)p-th value, between two by the straight line, never beyond the first or the last
   * (Hyndman and Fan 1996, type 6, the one of CLSI EP28).
   *
   * @param sorted at least one value, rising
   * @param p between 0 and 1
   */
  static double typeSix(double[] sorted, double p) {
    int n = sorted.length;
    double rank = Math.clamp((n + 1) * p, 1, n);
    int below = (int) rank;
    double low = sorted[below - 1];
    double part = rank - below;
    return part == 0 ? low : low + part * (sorted[below] - low);
  }

  /** The middle value. */
  static double median(double[] sorted) {
    return typeSix(sorted, 0.5);
  }
}
