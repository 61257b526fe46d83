package cistern.uncertainty;

import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A panel in the making, one result at a time. */
final class Samples {

  private final List<Measurement> results = new ArrayList<>();

  static Samples none() {
    return new Samples();
  }

  /** A result with the default imprecision. */
  Samples with(Sample sample, double value) {
    return with(sample, Interval.of(value), OptionalDouble.empty());
  }

  /** A result with a stated imprecision. */
  Samples with(Sample sample, double value, double cv) {
    return with(sample, Interval.of(value), OptionalDouble.of(cv));
  }

  /** A result as reported. */
  Samples with(Sample sample, Interval value, OptionalDouble cv) {
    Measurement plain = Measurement.of(sample, value);
    results.add(new Measurement(sample, value, cv, plain.assay(), plain.at(), plain.place()));
    return this;
  }

  /** CSF and serum with the default imprecision. */
  Samples withPair(Analyte analyte, double csf, double serum) {
    return with(Sample.csf(analyte), csf).with(Sample.serum(analyte), serum);
  }

  /** CSF and serum with one stated imprecision. */
  Samples withPair(Analyte analyte, double csf, double serum, double cv) {
    return with(Sample.csf(analyte), csf, cv).with(Sample.serum(analyte), serum, cv);
  }

  Panel aged(double years) {
    return Panel.of(Person.aged(years), results);
  }

  Interpreted interpreted() {
    return Interpreted.of(aged(35));
  }
}
