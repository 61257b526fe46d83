package cistern.uncertainty;

import cistern.finding.Finding;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import java.util.Optional;

/**
 * The values of a quantity that all have the same verdict.
 *
 * @param lower the lower end, possibly −∞
 * @param upper the upper end, possibly ∞; not over the lower end when there are no such values
 */
record Range(double lower, double upper) {

  /** All values. */
  static final Range ALL = new Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** The values to which some limits give a verdict. */
  static Range of(Limits limits, Verdict verdict) {
    double within = at(limits.within(), Double.NEGATIVE_INFINITY);
    double above = at(limits.above(), Double.POSITIVE_INFINITY);
    double borderline = at(limits.borderline(), above);
    return switch (verdict) {
      case ABOVE -> new Range(above, Double.POSITIVE_INFINITY);
      case BORDERLINE -> new Range(borderline, above);
      case WITHIN -> new Range(within, borderline);
      case BELOW -> new Range(Double.NEGATIVE_INFINITY, within);
      case UNDETERMINED -> ALL;
    };
  }

  /** The values that keep the verdict of a finding whose limits do not move. */
  static Range keeping(Finding finding) {
    return of(finding.limits(), finding.verdict());
  }

  private static double at(Optional<Threshold> cut, double otherwise) {
    return cut.map(Threshold::at).orElse(otherwise);
  }

  /** The values in both. */
  Range and(Range other) {
    return new Range(Math.max(lower, other.lower), Math.min(upper, other.upper));
  }

  /** These values times a positive number. */
  Range times(double factor) {
    return new Range(lower * factor, upper * factor);
  }

  /** Whether there are no such values. */
  boolean isEmpty() {
    return lower >= upper;
  }

  /** The chance of a value in this range. */
  double chance(LogNormal of) {
    return isEmpty() ? 0 : of.chanceBetween(lower, upper);
  }

  /** The bends of a rule for a variable kept in this range; the variable is not exact. */
  NormalRule.Bends bendsOf(LogNormal variable) {
    double from = lower <= 0 ? Double.NEGATIVE_INFINITY : Math.log(lower);
    return NormalRule.Bends.between(
        (from - variable.mu()) / variable.sigma(),
        (Math.log(upper) - variable.mu()) / variable.sigma());
  }

  /**
   * Notes a value at which a rule for a variable meets a step; none at zero and infinity.
   *
   * @param bends the bends of the rule
   * @param variable the variable, not exact
   * @param at the value
   * @param stepSigma how wide the step is, as a standard deviation of the value's logarithm
   */
  static void bend(NormalRule.Bends bends, LogNormal variable, double at, double stepSigma) {
    if (at > 0 && !Double.isInfinite(at)) {
      double z = (Math.log(at) - variable.mu()) / variable.sigma();
      bends.with(z, stepSigma / variable.sigma());
    }
  }
}
