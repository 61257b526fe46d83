package cistern.differential;

/**
 * What a test that has not been done would do to the probabilities.
 *
 * @param chanceFound the chance that it finds what it looks for, 0 to 1
 * @param msNow the probability of MS as it stands
 * @param msIfFound the probability of MS if it is found
 * @param msIfNot the probability of MS if it is not
 * @param information expected, in bits, about which disease it is
 */
public record Outcome(
    double chanceFound, double msNow, double msIfFound, double msIfNot, double information) {

  private static final double LN_2 = Math.log(2);

  /** The outcome, from the probabilities as they stand and the chance of a find in each disease. */
  static Outcome of(double[] now, double[] chances) {
    double found = 0;
    for (int d = 0; d < now.length; d++) {
      found += now[d] * chances[d];
    }
    double[] ifFound = new double[now.length];
    double[] ifNot = new double[now.length];
    for (int d = 0; d < now.length; d++) {
      ifFound[d] = found > 0 ? now[d] * chances[d] / found : now[d];
      ifNot[d] = found < 1 ? now[d] * (1 - chances[d]) / (1 - found) : now[d];
    }
    double left = found * entropy(ifFound) + (1 - found) * entropy(ifNot);
    return new Outcome(found, now[0], ifFound[0], ifNot[0], Math.max(0, entropy(now) - left));
  }

  private static double entropy(double[] probabilities) {
    double bits = 0;
    for (double p : probabilities) {
      bits -= p > 0 ? p * Math.log(p) / LN_2 : 0;
    }
    return bits;
  }

  /** How far the probability of MS is expected to move. */
  public double expectedShift() {
    return chanceFound * Math.abs(msIfFound - msNow)
        + (1 - chanceFound) * Math.abs(msIfNot - msNow);
  }
}
