package cistern.gel.pairing;

import cistern.fact.Facts;
import cistern.gel.bands.LaneBands;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What the broad polyclonal zone says of a pair: CSF and serum of one person have it at the same
 * place. How alike the lanes of one person and of two are on this gel is learned from its own pairs
 * and from CSF lanes beside the sera of other pairs; where both are alike it says nothing.
 *
 * @param same logarithm of the usual departure in a pair
 * @param other the same of lanes of two persons
 * @param spread standard deviation of both logarithms
 * @param most greatest log likelihood ratio that is believed
 */
public record Likeness(double same, double other, double spread, double most) {
  private static final int PARTS = 32;
  private static final int FEWEST = 3;

  /** Departure that noise alone can make. */
  private static final double LEAST = 0.03;

  /** What a gel's own pairs teach; of too few pairs nothing. */
  static Likeness of(Facts facts, List<PairFinder.Lanes> pairs) {
    List<Double> own = new ArrayList<>();
    List<Double> across = new ArrayList<>();
    for (PairFinder.Lanes csf : pairs) {
      for (PairFinder.Lanes serum : pairs) {
        double departure = departure(csf.csf(), serum.serum());
        (csf.equals(serum) ? own : across).add(departure);
      }
    }
    double same = own.size() < FEWEST ? 0 : median(own);
    double other = own.size() < FEWEST ? 0 : Math.max(same, median(across));
    return new Likeness(
        same, other, facts.number("gel.likeness.spread"), facts.number("gel.likeness.most"));
  }

  /** Log likelihood of one person against two. */
  public double logLikelihood(PairFinder.Lanes pair) {
    double d = departure(pair.csf(), pair.serum());
    double ratio = ((d - other) * (d - other) - (d - same) * (d - same)) / (2 * spread * spread);
    return Math.clamp(ratio, -most, most);
  }

  /** Logarithm of what a straight line leaves unexplained of one lane's course by the other's. */
  private static double departure(LaneBands csf, LaneBands serum) {
    double r = correlation(csf.background(PARTS), serum.background(PARTS));
    return Math.log(Math.sqrt(Math.max(0, 1 - r * Math.max(0, r))) + LEAST);
  }

  private static double correlation(double[] a, double[] b) {
    double ma = Arrays.stream(a).average().orElse(0);
    double mb = Arrays.stream(b).average().orElse(0);
    double ab = 0;
    double aa = 1e-12;
    double bb = 1e-12;
    for (int i = 0; i < a.length; i++) {
      ab += (a[i] - ma) * (b[i] - mb);
      aa += (a[i] - ma) * (a[i] - ma);
      bb += (b[i] - mb) * (b[i] - mb);
    }
    return ab / Math.sqrt(aa * bb);
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return sorted[sorted.length / 2];
  }
}
