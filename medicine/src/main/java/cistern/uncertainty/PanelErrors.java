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
  private record Value(LogNormal spread, boolean isImprecisionKnown) {

    private Value repeated() {
      return new Value(spread.repeated(), isImprecisionKnown);
    }
  }

  private final Map<Analyte, Value> csf = new EnumMap<>(Analyte.class);
  private final Map<Analyte, Value> serum = new EnumMap<>(Analyte.class);
  private final Map<Analyte, Value> blood = new EnumMap<>(Analyte.class);

  private PanelErrors() {}

  private PanelErrors(Panel panel, Imprecision imprecision) {
    for (Measurement result : panel.results().values()) {
      Interval interval = result.value();
      if (!interval.censored()) {
        OptionalDouble sigma = imprecision.sigma(result);
        LogNormal spread = LogNormal.of(interval.lower(), sigma.orElse(0));
        Sample sample = result.sample();
        of(sample.in()).put(sample.analyte(), new Value(spread, sigma.isPresent()));
      }
    }
  }

  private PanelErrors(PanelErrors once) {
    for (Compartment in : Compartment.values()) {
      once.of(in).forEach((analyte, value) -> of(in).put(analyte, value.repeated()));
    }
  }

  /**
   * The values of one panel of many.
   *
   * @param concentrations one array a sample; NaN where nothing was measured
   * @param row of the panel
   */
  static PanelErrors of(Map<Sample, double[]> concentrations, int row, Imprecision imprecision) {
    PanelErrors errors = new PanelErrors();
    concentrations.forEach(
        (sample, column) -> {
          if (!Double.isNaN(column[row])) {
            OptionalDouble sigma = imprecision.sigma(sample);
            LogNormal spread = LogNormal.of(column[row], sigma.orElse(0));
            errors.of(sample.in()).put(sample.analyte(), new Value(spread, sigma.isPresent()));
          }
        });
    return errors;
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
    return switch (in) {
      case CSF -> csf;
      case SERUM -> serum;
      case BLOOD -> blood;
    };
  }

  private Optional<Value> find(Sample sample) {
    return Optional.ofNullable(of(sample.in()).get(sample.analyte()));
  }

  /** Whether every one of the samples was measured and is a number. */
  boolean isExact(List<Sample> samples) {
    for (Sample sample : samples) {
      if (find(sample).isEmpty()) {
        return false;
      }
    }
    return true;
  }

  /** Whether the imprecision of any of the samples is known. */
  boolean isImprecisionKnown(List<Sample> samples) {
    for (Sample sample : samples) {
      Optional<Value> value = find(sample);
      if (value.isPresent() && value.get().isImprecisionKnown()) {
        return true;
      }
    }
    return false;
  }

  /** Whether none of the samples that are numbers has any error. */
  boolean isErrorFree(List<Sample> samples) {
    for (Sample sample : samples) {
      Optional<Value> value = find(sample);
      if (value.isPresent() && value.get().spread.sigma() > 0) {
        return false;
      }
    }
    return true;
  }

  /** The distribution of a sample that is a number. */
  LogNormal get(Sample sample) {
    return get(of(sample.in()), sample.analyte());
  }

  private static LogNormal get(Map<Analyte, Value> fluid, Analyte analyte) {
    Value value = fluid.get(analyte);
    if (value == null) {
      throw new IllegalStateException(analyte.code() + " is not a number");
    }
    return value.spread;
  }

  LogNormal csf(Analyte analyte) {
    return get(csf, analyte);
  }

  LogNormal serum(Analyte analyte) {
    return get(serum, analyte);
  }

  /** CSF over serum. */
  LogNormal quotient(Analyte analyte) {
    return csf(analyte).over(serum(analyte));
  }
}
