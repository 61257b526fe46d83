package cistern.uncertainty;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * How much a measured value varies: the coefficient of variation that the laboratory states with
 * the result, else the default of its sample. Cells have no default.
 */
final class Imprecision {

  private final Map<Compartment, Map<Analyte, OptionalDouble>> defaults =
      new EnumMap<>(Compartment.class);

  private Imprecision(Facts facts) {
    for (Compartment in : Compartment.values()) {
      Map<Analyte, OptionalDouble> sigmas = new EnumMap<>(Analyte.class);
      for (Analyte analyte : Analyte.values()) {
        String key = "cv." + new Sample(analyte, in).code();
        if (facts.find(key).isPresent()) {
          sigmas.put(analyte, OptionalDouble.of(LogNormal.sigma(facts.number(key))));
        }
      }
      defaults.put(in, sigmas);
    }
  }

  static Imprecision of(Facts facts) {
    return new Imprecision(facts);
  }

  /** The standard deviation of the logarithm of a result, if any is known. */
  OptionalDouble sigma(Measurement result) {
    return result.cv().isPresent()
        ? OptionalDouble.of(LogNormal.sigma(result.cv().getAsDouble()))
        : sigma(result.sample());
  }

  /** The default of a sample, if there is one. */
  OptionalDouble sigma(Sample sample) {
    return defaults
        .getOrDefault(sample.in(), Map.of())
        .getOrDefault(sample.analyte(), OptionalDouble.empty());
  }
}
