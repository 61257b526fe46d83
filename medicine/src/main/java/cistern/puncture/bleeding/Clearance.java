package cistern.puncture.bleeding;

import cistern.finding.Printed;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The creatinine clearance that guidelines ask for.
 *
 * @param value mL/min; empty when it is neither stated nor computable
 * @param origin whether it was stated or computed, or what is missing
 * @param near the thresholds within the reach of its error, mL/min: rows on both sides are shown
 */
public record Clearance(OptionalDouble value, String origin, List<Double> near) {

  /** Copies the thresholds. */
  public Clearance {
    near = List.copyOf(near);
  }

  /** Whether it is known. */
  public boolean isKnown() {
    return value.isPresent();
  }

  /** Whether a row for some clearances may be the one that is meant. */
  boolean isWithin(ClearanceBand band) {
    return value.isEmpty()
        || band.contains(value.getAsDouble())
        || near.stream().anyMatch(t -> band.contains(t) || reaches(band, t));
  }

  private static boolean reaches(ClearanceBand band, double threshold) {
    return band.contains(Math.nextDown(threshold)) || band.contains(Math.nextUp(threshold));
  }

  /** In words. */
  public String toText() {
    return value.isPresent()
        ? Printed.decimals(value.getAsDouble(), 1) + " mL/min, " + origin
        : "not known: " + origin;
  }
}
