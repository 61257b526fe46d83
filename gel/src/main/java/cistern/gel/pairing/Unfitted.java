package cistern.gel.pairing;

import cistern.fact.Facts;

/**
 * The chance that a CSF band has a counterpart in the serum where no band could be fitted, from the
 * serum's answer there: Bayes' rule for "no counterpart", whose answer is noise, against "a
 * counterpart", whose height is log-normally distributed around the CSF band's.
 *
 * @param prior chance of a counterpart
 * @param spread of the logarithm of the heights' ratio
 * @param ground spread of answers of an empty lane beyond its noise, over the CSF band's height
 */
record Unfitted(double prior, double spread, double ground) {
  private static final int STEPS = 16;
  private static final double REACH = 3;

  static Unfitted of(Facts facts) {
    return new Unfitted(
        facts.number("gel.unfitted.prior"),
        facts.number("gel.unfitted.spread"),
        facts.number("gel.unfitted.ground"));
  }

  /**
   * @param answer the serum's answer over the CSF band's height
   * @param noise its standard deviation over the CSF band's height
   */
  double of(double answer, double noise) {
    double wide = Math.hypot(noise, ground);
    double empty = normal(answer, wide);
    double held = 0;
    double all = 0;
    for (int i = -STEPS; i <= STEPS; i++) {
      double t = REACH * i / STEPS;
      double weight = Math.exp(-0.5 * t * t);
      held += weight * normal(answer - Math.exp(spread * t), wide);
      all += weight;
    }
    double with = prior * held / all;
    return with / (with + (1 - prior) * empty);
  }

  /** A normal density with a floor, so that no answer decides alone. */
  private static double normal(double distance, double sigma) {
    double t = distance / sigma;
    return (Math.exp(-0.5 * t * t) + 1e-3) / sigma;
  }
}
