package cistern.finding;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What measurement error alone leaves open about a finding.
 *
 * @param interval95 the equal-tailed 95 % interval of the (clipped) quantity, if it has one
 * @param probabilityAbove the chance that the true value lies above the limit, 0 to 1, if there is
 *     a limit
 */
public record Uncertainty(Optional<Interval95> interval95, OptionalDouble probabilityAbove) {

  /** Nothing known. */
  public static final Uncertainty NONE = new Uncertainty(Optional.empty(), OptionalDouble.empty());

  /**
   * The 2.5 % and 97.5 % points.
   *
   * @param lower in the finding's unit
   * @param upper in the finding's unit
   */
  public record Interval95(double lower, double upper) {}
}
