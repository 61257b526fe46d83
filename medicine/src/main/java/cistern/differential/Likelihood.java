package cistern.differential;

import java.util.List;

/**
 * How likely some observations are in one disease, heard one after another. Bands, κ and IgG index
 * are one witness: κ and IgG index speak only through whether there are bands. All else is taken as
 * independent given the disease and the bands.
 */
final class Likelihood {

  private final int bands;
  private final int[] withBands;
  private final int[] withoutBands;
  private final boolean[] isFound;
  private final boolean[] isBands;

  /** The rates that the observations need in one disease, as places among the beliefs. */
  Likelihood(Disease disease, List<Observation> heard, boolean isAfterMri, Beliefs beliefs) {
    boolean isStable = disease == Disease.OTHER && isAfterMri;
    bands = beliefs.place(isStable ? Rate.BANDS_AFTER_MRI : Rate.BANDS, disease);
    withBands = new int[heard.size()];
    withoutBands = new int[heard.size()];
    isFound = new boolean[heard.size()];
    isBands = new boolean[heard.size()];
    for (int i = 0; i < heard.size(); i++) {
      Trait trait = heard.get(i).trait();
      withBands[i] = beliefs.place(trait.rate(), disease);
      withoutBands[i] = beliefs.place(trait.rateWithoutBands(), disease);
      isFound[i] = heard.get(i).isFound();
      isBands[i] = trait == Trait.BANDS;
    }
  }

  /** The likelihood after none, one, … all observations, for the value of every rate. */
  double[] after(double[] rates) {
    double[] after = new double[withBands.length + 1];
    double with = rates[bands];
    double without = 1 - with;
    after[0] = 1;
    for (int i = 0; i < withBands.length; i++) {
      if (isBands[i]) {
        with = isFound[i] ? with : 0;
        without = isFound[i] ? 0 : without;
      } else {
        with *= chance(rates[withBands[i]], isFound[i]);
        without *= chance(rates[withoutBands[i]], isFound[i]);
      }
      after[i + 1] = with + without;
    }
    return after;
  }

  private static double chance(double found, boolean isFound) {
    return isFound ? found : 1 - found;
  }
}
