package cistern.analysis;

import cistern.bands.BandReading;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.UnitProfile;
import cistern.finding.Verdict;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * What one puncture showed.
 *
 * @param workup the id of its work-up
 * @param panel the results with everything that is wrong with them
 * @param findings every derived quantity
 * @param bands what follows from the gel
 * @param units in which papers write what was measured
 */
public record Puncture(
    String workup, CheckedPanel panel, Findings findings, BandReading bands, UnitProfile units) {

  /** A puncture that is written in the units of the medicine. */
  public Puncture(String workup, CheckedPanel panel, Findings findings, BandReading bands) {
    this(workup, panel, findings, bands, UnitProfile.STANDARD);
  }

  /** When the fluid was taken, if recorded. */
  public Optional<OffsetDateTime> at() {
    return panel.panel().csf().at();
  }

  /** Whose it is, if recorded. */
  public Optional<String> person() {
    return panel.panel().person().id();
  }

  /** The finding of a code. */
  public Finding finding(FindingCode code) {
    return findings.get(code);
  }

  /** The verdict of a code. */
  public Verdict verdict(FindingCode code) {
    return findings.verdict(code);
  }

  /** Whether a finding lies above its limit. */
  public boolean isAbove(FindingCode code) {
    return finding(code).isAbove();
  }

  /** What is known of a finding whose verdict can be trusted. */
  public Optional<Interval> trusted(FindingCode code) {
    return Optional.of(finding(code)).filter(f -> f.verdict().isDecided()).flatMap(Finding::value);
  }

  /** Whether a sample was measured. */
  public boolean has(Sample sample) {
    return panel.panel().has(sample);
  }

  /** What was measured of a sample, if it was. */
  public Optional<Interval> measured(Sample sample) {
    return panel.panel().find(sample).map(Measurement::value);
  }

  /** Whether CSF and serum were drawn too far apart to be compared. */
  public boolean isPairInvalid() {
    return panel.pairing().isInvalid();
  }
}
