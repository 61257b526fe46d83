package cistern.uncertainty;

/**
 * The fraction 1 − Qlim/Q, 0 where Q lies at or under Qlim. Quotient and limit are independent: the
 * limit depends on albumin alone. One of the two is integrated numerically, the other in closed
 * form: the one that matters more.
 */
final class IntrathecalFraction implements Spread {

  /** How much more the limit may vary than the quotient before the roles change. */
  private static final double STEEPEST = 1.5;

  private final LogNormal quotient;
  private final LogNormal albumin;
  private final Curve.Limit limit;
  private final double middle;
  private final double limitSigma;
  private final boolean isOverAlbumin;
  private final Grid grid;

  /** Logarithm of the limit, or of the quotient, at each point of the grid. */
  private final double[] logs;

  private final double overLimit;

  private IntrathecalFraction(LogNormal quotient, Grid albuminGrid, Curve.Limit limit) {
    this.quotient = quotient;
    this.limit = limit;
    albumin = albuminGrid.variable();
    double x = albumin.median();
    double atMedian = limit.at(x);
    middle = quotient.mu() - Math.log(atMedian);
    limitSigma = albumin.sigma() * x * limit.slopeAt(x) / atMedian;
    isOverAlbumin = limitSigma <= STEEPEST * quotient.sigma();
    grid = isOverAlbumin ? albuminGrid : Grid.line(quotient);
    logs = new double[grid.size()];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(isOverAlbumin ? limit.at(grid.value(i)) : grid.value(i));
    }
    overLimit = chanceOfLogOver(0);
  }

  /** The fraction of a quotient, seen from an albumin quotient. */
  static IntrathecalFraction of(LogNormal quotient, Grid albumin, Curve.Limit limit) {
    return new IntrathecalFraction(quotient, albumin, limit);
  }

  /** The chance that the logarithm of Q/Qlim lies over a value. */
  private double chanceOfLogOver(double ratio) {
    return isOverAlbumin ? overQuotient(ratio) : underAlbumin(ratio);
  }

  /** That chance in closed form over the quotient, given albumin. */
  private double overQuotient(double ratio) {
    double level = quotient.mu() - ratio;
    double sum = 0;
    for (int i = 0; i < logs.length; i++) {
      sum += grid.weight(i) * StandardNormal.above(level - logs[i], quotient.sigma());
    }
    return sum;
  }

  /** That chance in closed form over albumin, given the quotient. */
  private double underAlbumin(double ratio) {
    double sum = 0;
    for (int i = 0; i < logs.length; i++) {
      double chance = 1 - albumin.chanceOver(limit.inverse(Math.exp(logs[i] - ratio)));
      sum += grid.weight(i) * chance;
    }
    return sum;
  }

  /** The chance that the quotient lies over its limit. */
  double chanceOverLimit() {
    return overLimit;
  }

  @Override
  public double chanceOver(double fraction) {
    if (fraction < 0) {
      return 1;
    }
    return fraction >= 1 ? 0 : chanceOfLogOver(-Math.log1p(-fraction));
  }

  @Override
  public double quantile(double p) {
    if (quotient.median() == 0 || overLimit <= 1 - p) {
      return 0;
    }
    double scale = Math.hypot(quotient.sigma(), limitSigma);
    return -Math.expm1(-Quantile.of(this::chanceOfLogOver, p, middle, scale));
  }
}
