package cistern.gel.pairing;

import cistern.fact.Facts;
import java.util.List;

/**
 * Whether the serum lane belongs to the same person as the CSF lane. Systemic bands pass into the
 * CSF, so nearly every serum band has a counterpart there; in another person's serum counterparts
 * are accidents.
 */
record SerumIdentity(double prior, double found, double searching) {

  static SerumIdentity of(Facts facts) {
    return new SerumIdentity(
        facts.number("gel.identity.prior"),
        facts.number("gel.identity.found"),
        facts.number("gel.identity.searching"));
  }

  /**
   * The chance that the serum is another person's.
   *
   * @param distances distance of each counterpart in standard deviations
   * @param alone serum bands without counterpart
   * @param strain how far the lanes had to be moved against what was foretold
   * @param accident chance that a serum band of another person meets a CSF band
   */
  double probabilityOfOther(List<Double> distances, int alone, double accident, double strain) {
    double chance = Math.clamp(accident, 0.01, 0.9);
    double same = 0;
    for (double d : distances) {
      // Density of a counterpart's distance against an even one over ±2.5 standard deviations.
      same += Math.log(found / chance * 5 / Math.sqrt(2 * Math.PI)) - 0.5 * d * d;
    }
    same += alone * Math.log((1 - found) / (1 - chance));
    double searched = !distances.isEmpty() ? searching + strain : 0;
    double odds = Math.log(prior / (1 - prior)) - same + searched;
    return distances.size() + alone == 0 ? prior : 1 / (1 + Math.exp(-odds));
  }
}
