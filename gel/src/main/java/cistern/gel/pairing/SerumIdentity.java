package cistern.gel.pairing;

import cistern.fact.Facts;

/**
 * Whether the serum lane belongs to the same person as the CSF lane. Systemic bands pass into the
 * CSF, so nearly every serum band has a counterpart there; in another person's serum counterparts
 * are accidents.
 *
 * @param prior share of sera that are another person's
 */
record SerumIdentity(double prior) {

  static SerumIdentity of(Facts facts) {
    return new SerumIdentity(facts.number("gel.identity.prior"));
  }

  /**
   * The log likelihood of a pair whose serum may be another person's.
   *
   * @param evidence log likelihood of one person against two
   */
  double logLikelihood(double evidence) {
    return Math.log(prior + (1 - prior) * Math.exp(evidence));
  }

  /**
   * The chance that the serum is another person's.
   *
   * @param evidence log likelihood of one person against two
   */
  double probabilityOfOther(double evidence) {
    return 1 / (1 + (1 - prior) / prior * Math.exp(evidence));
  }
}
