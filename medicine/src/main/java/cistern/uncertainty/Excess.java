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
  private final Grid ones;
  private final Grid others;

  /** What the others stand for in the formula: the serum, or the share at their value. */
  private final double[] factors;

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
    ones = Grid.plane(closed == Variable.CSF ? serum : csf);
    others = Grid.plane(closed == Variable.SHARE ? serum : x);
    factors = new double[others.size()];
    for (int j = 0; j < factors.length; j++) {
      factors[j] = closed == Variable.SHARE ? others.value(j) : curve.at(others.value(j));
    }
  }

  private static Variable largest(double ofCsf, double ofSerum, double ofShare) {
    if (ofCsf >= ofSerum && ofCsf >= ofShare) {
      return Variable.CSF;
    }
    return ofSerum >= ofShare ? Variable.SERUM : Variable.SHARE;
  }

  @Override
  public double chanceOver(double excess) {
    if (isClipped && excess < 0) {
      return 1;
    }
    double sum = 0;
    for (int i = 0; i < ones.size(); i++) {
      double one = ones.value(i);
      sum +=
          ones.weight(i)
              * switch (closed) {
                case CSF -> overCsf(one, excess);
                case SERUM -> underSerum(one, excess);
                case SHARE -> underShare(one, excess);
              };
    }
    return sum;
  }

  /** The chance in closed form over CSF, given the serum. */
  private double overCsf(double given, double excess) {
    double sum = 0;
    for (int j = 0; j < factors.length; j++) {
      sum += others.weight(j) * csf.chanceOver(excess + factors[j] * given);
    }
    return sum;
  }

  /** The chance in closed form over serum, given the CSF. */
  private double underSerum(double given, double excess) {
    double sum = 0;
    for (int j = 0; j < factors.length; j++) {
      sum += others.weight(j) * under(serum, (given - excess) / factors[j]);
    }
    return sum;
  }

  /** The chance in closed form over what the share depends on, given the CSF. */
  private double underShare(double given, double excess) {
    double sum = 0;
    for (int j = 0; j < factors.length; j++) {
      double share = (given - excess) / factors[j];
      if (share > 0) {
        double at = curve.inverse(share);
        sum += others.weight(j) * (curve.isRising() ? under(x, at) : x.chanceOver(at));
      }
    }
    return sum;
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
