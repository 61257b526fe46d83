package cistern.uncertainty;

import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The measured values of a panel, each with what its measurement error leaves open. */
final class PanelErrors {

  /**
   * One value that is a number.
   *
   * @param spread its distribution; a value without a known imprecision is taken as it is
   * @param isImprecisionKnown whether an imprecision is known, even if it is 0
   */
  private record Value(LogNormal spread, boolean isImprecisionKnown) {}

  private final Map<Compartment, Map<Analyte, Value>> values = new EnumMap<>(Compartment.class);

  private PanelErrors(Panel panel, Imprecision imprecision) {
    for (Compartment in : Compartment.values()) {
      values.put(in, new EnumMap<>(Analyte.class));
    }
    for (Measurement result : panel.results().values()) {
      Interval interval = result.value().interval();
      if (!interval.censored()) {
        OptionalDouble sigma = imprecision.sigma(result);
        LogNormal spread = LogNormal.of(interval.lower(), sigma.orElse(0));
        Sample sample = result.sample();
        of(sample.in()).put(sample.analyte(), new Value(spread, sigma.isPresent()));
      }
    }
  }

  private PanelErrors(PanelErrors once) {
    once.values.forEach(
        (in, all) -> {
          Map<Analyte, Value> repeated = new EnumMap<>(Analyte.class);
          all.forEach(
              (analyte, value) ->
                  repeated.put(
                      analyte, new Value(value.spread.repeated(), value.isImprecisionKnown)));
          values.put(in, repeated);
        });
  }

  /** The values of a panel. */
  static PanelErrors of(Panel panel, Imprecision imprecision) {
    return new PanelErrors(panel, imprecision);
  }

  /** What another measurement of every sample would give, seen from this one. */
  PanelErrors repeated() {
    return new PanelErrors(this);
  }

  private Map<Analyte, Value> of(Compartment in) {
    return values.getOrDefault(in, Map.of());
  }

  private Optional<Value> find(Sample sample) {
    return Optional.ofNullable(of(sample.in()).get(sample.analyte()));
  }

  /** Whether every one of the samples was measured and is a number. */
  boolean isExact(List<Sample> samples) {
    return samples.stream().allMatch(s -> find(s).isPresent());
  }

  /** Whether the imprecision of any of the samples is known. */
  boolean isImprecisionKnown(List<Sample> samples) {
    return samples.stream().anyMatch(s -> find(s).filter(Value::isImprecisionKnown).isPresent());
  }

  /** Whether none of the samples that are numbers has any error. */
  boolean isErrorFree(List<Sample> samples) {
    return samples.stream().noneMatch(s -> find(s).filter(v -> v.spread.sigma() > 0).isPresent());
  }

  /** The distribution of a sample that is a number. */
  LogNormal get(Sample sample) {
    return find(sample)
        .map(Value::spread)
        .orElseThrow(() -> new IllegalStateException(sample.code() + " is not a number"));
  }

  LogNormal csf(Analyte analyte) {
    return get(Sample.csf(analyte));
  }

  LogNormal serum(Analyte analyte) {
    return get(Sample.serum(analyte));
  }

  /** CSF over serum. */
  LogNormal quotient(Analyte analyte) {
    return csf(analyte).over(serum(analyte));
  }
}
