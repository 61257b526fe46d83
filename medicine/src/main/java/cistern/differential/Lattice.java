package cistern.differential;

import cistern.fact.Facts;

/**
 * A rank-1 lattice of Korobov over all rates and the prior range: every dimension runs through the
 * same strata in another order (Korobov 1959; Sloan and Joe 1994, Lattice Methods for Multiple
 * Integration).
 */
final class Lattice {

  private final double[][] byPlaceAndPoint;
  private final double[] shares;

  private Lattice(double[][] byPlaceAndPoint, double[] shares) {
    this.byPlaceAndPoint = byPlaceAndPoint;
    this.shares = shares;
  }

  static Lattice of(Beliefs beliefs, Facts facts) {
    int points = (int) facts.number("differential.lattice.points");
    int generator = (int) facts.number("differential.lattice.generator");
    double[][] rates = new double[beliefs.size()][points];
    long step = 1;
    for (int place = 0; place < rates.length; place++) {
      double[] quantiles = beliefs.at(place).quantiles(points);
      for (int point = 0; point < points; point++) {
        rates[place][point] = quantiles[(int) (point * step % points)];
      }
      step = step * generator % points;
    }
    double[] shares = new double[points];
    for (int point = 0; point < points; point++) {
      shares[point] = (double) (point * step % points) / (points - 1);
    }
    return new Lattice(rates, shares);
  }

  int points() {
    return shares.length;
  }

  /** The value of a rate at a point. */
  double rate(int place, int point) {
    return byPlaceAndPoint[place][point];
  }

  /** How far into the prior range a point lies, 0 to 1. */
  double share(int point) {
    return shares[point];
  }
}
