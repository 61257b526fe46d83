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
 * @param found chance that a strong serum band of a person is seen in the CSF
 * @param ratio spread of the logarithm of counterparts' heights
 * @param anyRatio the same of bands of two persons
 */
record Counterparts(double spread, double length, double found, double ratio, double anyRatio) {
  /** Distance beyond which bands are no counterparts, standard deviations. */
  private static final double REACH = 5;

  private static final double NEAR_MISS = 6;

  static Counterparts of(Facts facts, double spread, double height) {
    return new Counterparts(
        spread,
        facts.number("gel.identity.length") * height,
        facts.number("gel.identity.found"),
        facts.number("gel.identity.ratio"),
        facts.number("gel.identity.any-ratio"));
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
        if (Math.abs(d) > NEAR_MISS && Math.abs(d) < 2 * NEAR_MISS) {
          ring += c.probability() * length / (2 * NEAR_MISS * spread * Math.max(1, many));
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
    return anyRatio
        / ratio
        * Math.exp(-0.5 * r * r * (1 / (ratio * ratio) - 1 / (anyRatio * anyRatio)));
  }
}
