package cistern.panel;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.Set;

/**
 * A serum value under the lower end of its range.
 *
 * @param limit that end, mg/L
 * @param place where the value stands
 * @param grounds what the end rests on
 */
record LowSerum(double limit, String place, Grounds grounds) {

  /** The value of a sample if it is too low; a doubted value is not looked at. */
  static Optional<LowSerum> of(Panel panel, Sample sample, Set<Sample> suspected, Facts facts) {
    Fact fact = facts.fact("low." + sample.code());
    double limit = facts.number(fact.key());
    return panel
        .find(sample)
        .filter(m -> !suspected.contains(sample))
        .filter(m -> isUnder(m, limit))
        .map(m -> new LowSerum(limit, m.place(), Grounds.of(fact)));
  }

  private static boolean isUnder(Measurement serum, double limit) {
    Interval value = serum.value();
    return value.censored() ? value.upper() <= limit : value.upper() < limit;
  }
}
