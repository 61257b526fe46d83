package cistern.panel;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.finding.UnitProfile;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.Set;

/**
 * A serum value under the lower end of its range.
 *
 * @param limit that end, with its unit
 * @param place where the value stands
 * @param grounds what the end rests on
 */
record LowSerum(String limit, String place, Grounds grounds) {

  private static final double MG_PER_G = 1000;

  /** The value of a sample if it is too low; a doubted value is not looked at. */
  static Optional<LowSerum> of(Panel panel, Sample sample, Set<Sample> suspected, Facts facts) {
    Fact fact = facts.fact("low." + sample.code());
    double limit = facts.number(fact.key());
    return panel
        .find(sample)
        .filter(m -> !suspected.contains(sample))
        .filter(m -> isUnder(m, limit))
        .map(m -> new LowSerum(written(sample, limit, facts), m.place(), Grounds.of(fact)));
  }

  private static String written(Sample sample, double limit, Facts facts) {
    return UnitProfile.of(facts)
        .limit(sample, limit, Printed.significant(limit / MG_PER_G) + " g/L");
  }

  private static boolean isUnder(Measurement serum, double limit) {
    Interval value = serum.value();
    return value.censored() ? value.upper() <= limit : value.upper() < limit;
  }
}
