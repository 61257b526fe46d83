package cistern.uncertainty;

import java.util.List;

/**
 * An antibody index, an antibody's quotient over the quotient that total IgG explains.
 *
 * @param specific the antibody's quotient
 * @param expected the explained quotient
 * @param points its fixed points
 */
record AntibodyIndex(LogNormal specific, ExpectedQuotient expected, ExpectedQuotient.Points points)
    implements Spread {

  @Override
  public double chanceOver(double index) {
    if (index <= 0) {
      return specific.median() > 0 ? 1 : 0;
    }
    if (specific.sigma() > 0 && !expected.isSmooth(specific.sigma())) {
      LogNormal step = specific.times(1 / index);
      return expected.splitPoints(List.of(step)).chanceOver(specific, index);
    }
    return specific.sigma() > 0
        ? points.chanceOver(specific, index)
        : 1 - expected.chanceOfLogOver(specific.mu() - Math.log(index));
  }

  @Override
  public double quantile(double p) {
    if (specific.median() == 0) {
      return 0;
    }
    double middle = specific.mu() - expected.medianLog();
    double scale = Math.hypot(specific.sigma(), expected.sigma());
    return Math.exp(Quantile.of(log -> chanceOver(Math.exp(log)), p, middle, scale));
  }
}
