package cistern.redflag;

import cistern.bands.BandReading;
import cistern.differential.Serology;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.FindingValue;
import cistern.finding.Findings;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the red flags are looked for in.
 *
 * @param panel the panel with its problems
 * @param findings every derived quantity
 * @param reading what the gel says
 * @param bands CSF-only bands as the criteria see them
 * @param serology tests for single antibodies
 * @param facts the thresholds
 */
public record Seen(
    CheckedPanel panel,
    Findings findings,
    BandReading reading,
    Answer bands,
    List<Serology> serology,
    Facts facts) {

  /** Copies the list. */
  public Seen {
    serology = List.copyOf(serology);
  }

  /** The value of a finding, or its lower end when censored, where its verdict can be trusted. */
  OptionalDouble least(FindingCode code) {
    Finding finding = findings.get(code);
    if (!finding.verdict().isDecided()) {
      return OptionalDouble.empty();
    }
    return switch (finding.value()) {
      case FindingValue.None none -> OptionalDouble.empty();
      case FindingValue.Point(double value) -> OptionalDouble.of(value);
      case FindingValue.Bounds(double lower, double upper) -> OptionalDouble.of(lower);
    };
  }

  /** Leukocytes without those that the blood brought, per µL. */
  OptionalDouble leukocytes() {
    OptionalDouble corrected = least(FindingCode.LEUKOCYTES_CORRECTED);
    OptionalDouble counted = least(FindingCode.LEUKOCYTES);
    return corrected.isPresent() && counted.isPresent() ? corrected : counted;
  }

  /** The share of one kind of cell in CSF, exactly known. */
  OptionalDouble cellShare(Analyte kind) {
    Optional<Interval> share =
        panel.panel().find(Sample.csf(kind)).map(Measurement::value).map(v -> v.interval());
    return share.filter(i -> !i.censored()).isPresent()
        ? OptionalDouble.of(share.get().exactly())
        : OptionalDouble.empty();
  }

  /** The number of a threshold. */
  double threshold(String key) {
    return facts.number(key);
  }

  /** Whether the bands may be judged at all: confirmed, and the fluids drawn together. */
  boolean isReadingUsable() {
    return reading.isReported() && reading.isConfirmed() && !panel.pairing().isInvalid();
  }
}
