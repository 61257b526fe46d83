package cistern.differential;

import cistern.fact.Facts;

/**
 * A rank-1 lattice of Korobov over all rates and the prior range: every dimension runs through the
 * same strata in another order (Korobov 1959; Sloan and Joe 1994, Lattice Methods for Multiple
 * Integration).
 */
final class Lattice {

  private final double[][] byPoint;
  private final double[] shares;

  private Lattice(double[][] byPoint, double[] shares) {
    this.byPoint = byPoint;
    this.shares = shares;
  }

  static Lattice of(Beliefs beliefs, Facts facts) {
    int points = (int) facts.number("differential.lattice.points");
    int generator = (int) facts.number("differential.lattice.generator");
    double[][] rates = new double[points][beliefs.size()];
    long step = 1;
    for (int place = 0; place < beliefs.size(); place++) {
      double[] quantiles = beliefs.at(place).quantiles(points);
      for (int point = 0; point < points; point++) {
        rates[point][place] = quantiles[(int) (point * step % points)];
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

  /** The values of all rates at a point, by their places among the beliefs. */
  double[] rates(int point) {
    return byPoint[point];
  }

  /** How far into the prior range a point lies, 0 to 1. */
  double share(int point) {
    return shares[point];
  }
}
