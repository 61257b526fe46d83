package cistern.gel.pairing;

import cistern.fact.Facts;
import cistern.gel.bands.Band;
import java.util.List;

/**
 * How likely the serum's bands are as counterparts of the CSF's, against bands of another person,
 * which lie anywhere and have any height.
 *
 * @param spread standard deviation of the distance of counterparts, rows
 * @param length rows over which another person's bands lie
 * @param nearMiss least distance of a band that misses another narrowly, standard deviations
 * @param found chance that a strong serum band of a person is seen in the CSF
 * @param ratios how heights compare
 */
record Counterparts(double spread, double length, double nearMiss, double found, Ratios ratios) {
  /**
   * How heights of bands compare.
   *
   * @param same spread of the logarithm of counterparts' heights
   * @param any the same of bands of two persons
   */
  record Ratios(double same, double any) {}

  /** Distance beyond which bands are no counterparts, standard deviations. */
  private static final double REACH = 5;

  static Counterparts of(Facts facts, double spread, double height) {
    return new Counterparts(
        spread,
        facts.number("gel.identity.length") * height,
        facts.number("gel.identity.near-miss"),
        facts.number("gel.identity.found"),
        new Ratios(facts.number("gel.identity.ratio"), facts.number("gel.identity.any-ratio")));
  }

  /** Log likelihood of one person against two, under an alignment. */
  double logLikelihood(List<Band> csf, List<Band> serum, Alignment a) {
    double many = 1e-9;
    for (Band c : csf) {
      many += c.probability();
    }
    double scale = length / (spread * Math.sqrt(2 * Math.PI) * Math.max(1, many));
    double sum = 0;
    for (Band s : serum) {
      double near = 0;
      double ring = 0;
      for (Band c : csf) {
        double d = (a.toSerum(c.y()) - s.y()) / spread;
        if (Math.abs(d) > nearMiss && Math.abs(d) < 2 * nearMiss) {
          ring += c.probability() * length / (2 * nearMiss * spread * Math.max(1, many));
        }
        if (Math.abs(d) < REACH) {
          near += c.probability() * Math.exp(-0.5 * d * d) * heights(s.height() / c.height());
        }
      }
      double same = (1 - found) * (0.5 + 0.5 * ring) + found * near * scale;
      sum += Math.log(1 - s.probability() + s.probability() * same);
    }
    return sum;
  }

  private double heights(double share) {
    double r = Math.log(share);
    double same = ratios.same();
    double any = ratios.any();
    return any / same * Math.exp(-0.5 * r * r * (1 / (same * same) - 1 / (any * any)));
  }
}
