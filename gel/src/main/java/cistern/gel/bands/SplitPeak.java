package cistern.gel.bands;

import java.util.List;

/**
 * Takes a band that is far wider than the gel's for two of the common width, if these fit better.
 */
final class SplitPeak {
  private static final int ROUNDS = 12;
  private static final double STIFF = 100;

  /** Where the two begin, in σ on either side. */
  private static final double APART = 1.2;

  private static final double REACH = 4;
  private final Limits limits;
  private final double sigma;

  /**
   * @param widening width from which a band may be two, over the gel's
   * @param left greatest share of the misfit that two may leave
   * @param weaker least height of the weaker, as a share of the stronger
   * @param nearest least distance of the two in σ
   */
  record Limits(double widening, double left, double weaker, double nearest) {}

  /**
   * @param sigma of the gel's bands, rows
   */
  SplitPeak(Limits limits, double sigma) {
    this.limits = limits;
    this.sigma = sigma;
  }

  /** Splits what should be split; whether there was any. */
  boolean split(PeakFit fit, List<Peak> peaks) {
    boolean isAny = false;
    for (int i = peaks.size() - 1; i >= 0; i--) {
      if (peaks.get(i).height() > 0 && peaks.get(i).widening() > limits.widening()) {
        isAny |= isSplit(fit, peaks, i);
      }
    }
    return isAny;
  }

  private boolean isSplit(PeakFit fit, List<Peak> peaks, int i) {
    Peak one = peaks.get(i);
    double before = fit.left(one.y(), REACH * sigma);
    fit.take(one, 1);
    Peak upper = new Peak(one.y() - APART * sigma, 0.6 * one.height(), 1);
    Peak lower = new Peak(one.y() + APART * sigma, 0.6 * one.height(), 1);
    fit.take(upper, -1);
    fit.take(lower, -1);
    for (int round = 0; round < ROUNDS; round++) {
      upper = fit.improve(upper, STIFF);
      lower = fit.improve(lower, STIFF);
    }
    double after = fit.left(one.y(), REACH * sigma);
    double weaker = Math.min(upper.height(), lower.height());
    boolean isTwo =
        after < limits.left() * before
            && weaker > limits.weaker() * Math.max(upper.height(), lower.height())
            && lower.y() - upper.y() > limits.nearest() * sigma;
    if (isTwo) {
      peaks.set(i, upper);
      peaks.add(lower);
    } else {
      fit.take(upper, 1);
      fit.take(lower, 1);
      fit.take(one, -1);
    }
    return isTwo;
  }
}
