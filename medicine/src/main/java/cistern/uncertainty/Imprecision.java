package cistern.uncertainty;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * How much a measured value varies: the coefficient of variation that the laboratory states with
 * the result, else the default of its sample. Cells have no default.
 */
final class Imprecision {

  private final Map<Sample, OptionalDouble> defaults = new HashMap<>();

  private Imprecision(Facts facts) {
    for (Analyte analyte : Analyte.values()) {
      for (Compartment in : Compartment.values()) {
        Sample sample = new Sample(analyte, in);
        String key = "cv." + sample.code();
        defaults.put(
            sample,
            facts.find(key).isPresent()
                ? OptionalDouble.of(LogNormal.sigma(facts.number(key)))
                : OptionalDouble.empty());
      }
    }
  }

  static Imprecision of(Facts facts) {
    return new Imprecision(facts);
  }

  /** The standard deviation of the logarithm of a result, if any is known. */
  OptionalDouble sigma(Measurement result) {
    return result.cv().isPresent()
        ? OptionalDouble.of(LogNormal.sigma(result.cv().getAsDouble()))
        : defaults.getOrDefault(result.sample(), OptionalDouble.empty());
  }
}
