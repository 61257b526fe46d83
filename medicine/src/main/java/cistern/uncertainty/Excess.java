package cistern.uncertainty;

/**
 * A CSF concentration minus the share of the serum concentration that is expected in it: local
 * amount, synthesis rate, correction for blood. Of the three independent variables two are
 * integrated numerically and the third, the one that matters most, in closed form.
 */
final class Excess implements Spread {

  private enum Variable {
    CSF,
    SERUM,
    SHARE
  }

  private final LogNormal csf;
  private final LogNormal serum;
  private final LogNormal x;
  private final Curve curve;
  private final boolean isClipped;
  private final double scale;
  private final Variable closed;
  private final NormalRule first;
  private final NormalRule second;

  /** The values of the two numerical variables at their points; the share takes its curve's. */
  private final double[] ones;

  private final double[] others;

  /**
   * An excess.
   *
   * @param csf what was measured in CSF
   * @param serum what was measured in serum, in the same unit
   * @param x what the share depends on
   * @param curve the share
   * @param isClipped whether a negative excess counts as none
   */
  Excess(LogNormal csf, LogNormal serum, LogNormal x, Curve curve, boolean isClipped) {
    this.csf = csf;
    this.serum = serum;
    this.x = x;
    this.curve = curve;
    this.isClipped = isClipped;
    double ofCsf = csf.sigma() * csf.median();
    double ofSerum = serum.sigma() * serum.median() * curve.at(x.median());
    double ofShare = x.sigma() * x.median() * Math.abs(curve.slopeAt(x.median())) * serum.median();
    scale = Math.sqrt(ofCsf * ofCsf + ofSerum * ofSerum + ofShare * ofShare);
    closed = largest(ofCsf, ofSerum, ofShare);
    LogNormal one = closed == Variable.CSF ? serum : csf;
    LogNormal other = closed == Variable.SHARE ? serum : x;
    first = NormalRule.plane(one.sigma());
    second = NormalRule.plane(other.sigma());
    ones = values(one, first);
    others = values(other, second);
    if (closed != Variable.SHARE) {
      for (int j = 0; j < others.length; j++) {
        others[j] = curve.at(others[j]);
      }
    }
  }

  private static Variable largest(double ofCsf, double ofSerum, double ofShare) {
    if (ofCsf >= ofSerum && ofCsf >= ofShare) {
      return Variable.CSF;
    }
    return ofSerum >= ofShare ? Variable.SERUM : Variable.SHARE;
  }

  private static double[] values(LogNormal variable, NormalRule rule) {
    double[] values = new double[rule.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = variable.at(rule.point(i));
    }
    return values;
  }

  @Override
  public double chanceOver(double excess) {
    if (isClipped && excess < 0) {
      return 1;
    }
    double sum = 0;
    for (int i = 0; i < ones.length; i++) {
      double inner = 0;
      for (int j = 0; j < others.length; j++) {
        inner += second.weight(j) * chance(ones[i], others[j], excess);
      }
      sum += first.weight(i) * inner;
    }
    return sum;
  }

  /** The chance in closed form when the other two variables are given. */
  private double chance(double one, double other, double excess) {
    return switch (closed) {
      case CSF -> csf.chanceOver(excess + other * one);
      case SERUM -> under(serum, (one - excess) / other);
      case SHARE -> {
        double share = (one - excess) / other;
        double at = curve.inverse(share);
        yield share <= 0 ? 0 : curve.isRising() ? under(x, at) : x.chanceOver(at);
      }
    };
  }

  private static double under(LogNormal variable, double value) {
    return 1 - variable.chanceOver(value);
  }

  @Override
  public double quantile(double p) {
    if (isClipped && chanceOver(0) <= 1 - p) {
      return 0;
    }
    double middle = csf.median() - curve.at(x.median()) * serum.median();
    return scale == 0 ? middle : Quantile.of(this::chanceOver, p, middle, scale);
  }
}
