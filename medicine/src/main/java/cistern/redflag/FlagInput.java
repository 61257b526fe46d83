package cistern.redflag;

import cistern.analysis.Puncture;
import cistern.differential.Serology;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the red flags are looked for in.
 *
 * @param puncture what was found
 * @param bands CSF-only bands as the criteria see them
 * @param serology tests for single antibodies
 * @param facts the thresholds
 */
public record FlagInput(Puncture puncture, Answer bands, List<Serology> serology, Facts facts) {

  /** Copies the list. */
  public FlagInput {
    serology = List.copyOf(serology);
  }

  /** The value of a finding, or its lower end when censored, where its verdict can be trusted. */
  OptionalDouble least(FindingCode code) {
    return number(puncture.trusted(code).map(Interval::lower));
  }

  /** Leukocytes without those that the blood brought, per µL. */
  OptionalDouble leukocytes() {
    OptionalDouble corrected = least(FindingCode.LEUKOCYTES_CORRECTED);
    OptionalDouble counted = least(FindingCode.LEUKOCYTES);
    return corrected.isPresent() && counted.isPresent() ? corrected : counted;
  }

  /** The share of one kind of cell in CSF, exactly known. */
  OptionalDouble cellShare(Analyte kind) {
    return number(
        puncture.measured(Sample.csf(kind)).filter(Interval::isExact).map(Interval::exactly));
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  /** The number of a threshold. */
  double threshold(String key) {
    return facts.number(key);
  }

  /** Whether the bands may be judged at all: confirmed, and the fluids drawn together. */
  boolean isReadingUsable() {
    return puncture.bands().isReported()
        && puncture.bands().isConfirmed()
        && !puncture.isPairInvalid();
  }
}
