package cistern.report;

import cistern.bands.BandCounts;
import cistern.bands.BandReport;
import cistern.bands.BandReport.Counted;
import cistern.bands.BandReport.Origin;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Findings;
import cistern.finding.Problem;
import cistern.finding.Uncertainty;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A puncture made up for tests, built result by result. All values are invented. */
public record InventedPuncture(
    String id, Person person, List<Measurement> results, BandReport bands, List<Problem> problems) {

  private static final Interpreter STANDARD = Interpreter.of(Facts.standard());

  /** An adult of 35 years of whom nothing was measured. */
  public static InventedPuncture empty() {
    return new InventedPuncture(
        "invented-1", Person.aged(35), List.of(), new BandReport.NotReported(), List.of());
  }

  /** Synthetic panel 2 of the project's own sanity tables: local IgG and κ, barrier holds. */
  public static InventedPuncture withLocalSynthesis() {
    return empty()
        .with(Analyte.ALBUMIN, 220, 42_000)
        .with(Analyte.IGG, 62, 11_000)
        .with(Analyte.KAPPA, 4.5, 13);
  }

  /** This puncture of somebody else. */
  public InventedPuncture with(Person other) {
    return new InventedPuncture(id, other, results, bands, problems);
  }

  /** This puncture under another name. */
  public InventedPuncture withId(String other) {
    return new InventedPuncture(other, person, results, bands, problems);
  }

  /** This puncture with a pair of results, mg/L or as the analyte has it. */
  public InventedPuncture with(Analyte analyte, double csf, double serum) {
    return with(Sample.csf(analyte), Interval.of(csf))
        .with(Sample.serum(analyte), Interval.of(serum));
  }

  /** This puncture with a CSF value below the limit of quantitation. */
  public InventedPuncture withBelow(Analyte analyte, double limit) {
    return with(Sample.csf(analyte), Interval.below(limit));
  }

  /** This puncture with a CSF value above the measuring range. */
  public InventedPuncture withAbove(Analyte analyte, double limit) {
    return with(Sample.csf(analyte), Interval.above(limit));
  }

  /** This puncture with a result, in place of any other of the same sample. */
  public InventedPuncture with(Sample sample, Interval value) {
    List<Measurement> more = new ArrayList<>(results);
    more.removeIf(m -> m.sample().equals(sample));
    more.add(Measurement.of(sample, value));
    return new InventedPuncture(id, person, more, bands, problems);
  }

  /** This puncture with counted bands. */
  public InventedPuncture withBands(int csfOnly, int shared) {
    BandCounts counts =
        new BandCounts(OptionalInt.of(csfOnly), OptionalInt.of(shared), OptionalInt.of(0));
    return with(new Counted(counts, Optional.empty(), Origin.UNKNOWN, Optional.empty()));
  }

  /** This puncture with a band report. */
  public InventedPuncture with(BandReport report) {
    return new InventedPuncture(id, person, results, report, problems);
  }

  /** This puncture with problems of the file. */
  public InventedPuncture with(List<Problem> found) {
    return new InventedPuncture(id, person, results, bands, found);
  }

  /** What it says under the standard facts. */
  public Interpretation interpretation() {
    return interpretation(STANDARD);
  }

  /** What it says under some facts. */
  public Interpretation interpretation(Facts facts) {
    return interpretation(Interpreter.of(facts));
  }

  private Interpretation interpretation(Interpreter interpreter) {
    return interpreter.interpret(new Workup(id, Panel.of(person, results), bands, problems));
  }

  /** Its findings. */
  public Findings findings() {
    return interpretation().findings();
  }

  /** Its findings with a 95 % interval from value / factor to value · factor on every number. */
  public Findings findings(double factor) {
    return Findings.of(findings().all().stream().map(f -> widened(f, factor)).toList());
  }

  private static Finding widened(Finding finding, double factor) {
    double v = finding.number().orElse(0);
    return v > 0
        ? finding.withUncertainty(
            new Uncertainty(
                Optional.of(Interval.between(v / factor, v * factor)), OptionalDouble.empty()))
        : finding;
  }
}
