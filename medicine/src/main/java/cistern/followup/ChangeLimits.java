package cistern.followup;

import java.util.List;

/**
 * By how much the later of two values may differ from the earlier from variation alone: up = exp(z
 * · √(σ₁² + σ₂²)) − 1, down = exp(−z · √(σ₁² + σ₂²)) − 1, with σ² = ln(1 + CVa² + CVi²) (log-normal
 * reference change value, Fokkema 2006). (1 + up)(1 + down) = 1.
 *
 * @param down a fraction, not positive
 * @param up a fraction, not negative
 */
public record ChangeLimits(double down, double up) {

  /**
   * The limits for two values.
   *
   * @param z standard normal deviate, two-sided
   * @param logVariances σ² of each value on the logarithmic scale
   */
  static ChangeLimits of(double z, List<Double> logVariances) {
    double spread = z * Math.sqrt(logVariances.stream().mapToDouble(Double::doubleValue).sum());
    return new ChangeLimits(Math.expm1(-spread), Math.expm1(spread));
  }

  /**
   * σ² of one value on the logarithmic scale: its analytical variances ln(1 + cv²) add up to ln(1 +
   * CVa²), and the biological CV joins inside the logarithm.
   *
   * @param analyticalLogVariance Σ ln(1 + cv²) over the inputs
   * @param biologicalCv a fraction; 0 for none
   */
  static double logVariance(double analyticalLogVariance, double biologicalCv) {
    return Math.log1p(Math.expm1(analyticalLogVariance) + biologicalCv * biologicalCv);
  }

  /** Whether a relative change lies beyond them; a limit itself is still variation. */
  boolean isPassedBy(double relativeChange) {
    return relativeChange > up || relativeChange < down;
  }
}
