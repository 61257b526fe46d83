package cistern.redflag;

import cistern.analysis.Puncture;
import cistern.differential.Serology;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.finding.WrittenUnit;
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

  private static final String LEUKOCYTES = "leukocytes";

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

  /** A concentration with its unit. */
  String amount(double held, FindingCode code) {
    return written(held, code) + " " + unit(code).map(WrittenUnit::text).orElse(code.unit().ucum());
  }

  /** So many leukocytes with their unit. */
  String leukocytes(double held) {
    String number = written(held, FindingCode.LEUKOCYTES);
    return unit(FindingCode.LEUKOCYTES)
        .map(unit -> unit.of(number, LEUKOCYTES))
        .orElseGet(() -> number + " " + LEUKOCYTES + "/µL");
  }

  private String written(double held, FindingCode code) {
    return Printed.of(puncture.finding(code), held);
  }

  private Optional<WrittenUnit> unit(FindingCode code) {
    return puncture.finding(code).unit();
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
