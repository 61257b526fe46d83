package cistern.measurement;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One result of a laboratory.
 *
 * @param sample what was measured in which fluid
 * @param value in the analyte's canonical unit
 * @param cv analytical coefficient of variation as a fraction, when the laboratory states it
 * @param assay the method, when stated
 * @param at when the result was measured, when stated
 * @param tube which tube it was counted in
 * @param place where it stands in the file it came from
 */
public record Measurement(
    Sample sample,
    Interval value,
    OptionalDouble cv,
    Optional<String> assay,
    Optional<OffsetDateTime> at,
    Tube tube,
    String place) {

  /** Checks the range: a reported value is finite and not negative, or a bound that is. */
  public Measurement {
    if (!(value.lower() >= 0) || Double.isInfinite(value.lower())) {
      throw new IllegalArgumentException("a reported value is finite and not negative");
    }
  }

  /** Which tube of several was counted. */
  public enum Tube {
    /** Not said: the usual case. */
    UNNAMED,
    FIRST,
    LAST
  }

  /** A result of which the tube is not said. */
  public Measurement(
      Sample sample,
      Interval value,
      OptionalDouble cv,
      Optional<String> assay,
      Optional<OffsetDateTime> at,
      String place) {
    this(sample, value, cv, assay, at, Tube.UNNAMED, place);
  }

  /** A result without further detail. */
  public static Measurement of(Sample sample, Interval value) {
    return new Measurement(
        sample,
        value,
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        "results." + sample.code());
  }
}
