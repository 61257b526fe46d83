package cistern.finding;

import cistern.measurement.Interval;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What measurement error alone leaves open about a finding.
 *
 * @param interval95 the equal-tailed 95 % interval of the (clipped) quantity, if it has one
 * @param probabilityAbove the chance that the true value lies above the limit, 0 to 1, if there is
 *     a limit
 */
public record Uncertainty(Optional<Interval> interval95, OptionalDouble probabilityAbove) {

  /** Nothing known. */
  public static final Uncertainty NONE = new Uncertainty(Optional.empty(), OptionalDouble.empty());
}
