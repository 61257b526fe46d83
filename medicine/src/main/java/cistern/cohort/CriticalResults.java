package cistern.cohort;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.puncture.procedure.After.SentTest;
import cistern.puncture.procedure.CsfTest;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** The tests of a puncture with a result on the local list of values that somebody must be told. */
final class CriticalResults {

  private CriticalResults() {}

  static Set<CsfTest> of(Interpretation interpretation, Facts facts) {
    Set<CsfTest> critical = EnumSet.noneOf(CsfTest.class);
    Optional<Interval> glucose = value(interpretation, Analyte.GLUCOSE);
    boolean isGlucose =
        glucose
            .filter(
                g ->
                    g.upper() <= facts.number("critical.glucose.lower")
                        || g.lower() >= facts.number("critical.glucose.upper"))
            .isPresent();
    if (isGlucose) {
      critical.add(CsfTest.CHEMISTRY);
    }
    boolean areCells =
        facts.fact("critical.leukocytes.upper").value() instanceof FactValue.Figure limit
            && value(interpretation, Analyte.LEUKOCYTES)
                .filter(cells -> cells.lower() >= limit.value())
                .isPresent();
    if (areCells) {
      critical.add(CsfTest.CELLS);
    }
    interpretation.workup().procedure().after().sent().stream()
        .filter(sent -> sent.positive().isYes())
        .map(SentTest::test)
        .forEach(critical::add);
    return critical;
  }

  private static Optional<Interval> value(Interpretation interpretation, Analyte analyte) {
    return interpretation.workup().panel().find(Sample.csf(analyte)).map(Measurement::value);
  }
}
