package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.ucum.Ratio;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.Optional;

/**
 * A result before its unit is converted.
 *
 * @param fields where it stands
 * @param sample what was measured in which fluid
 * @param value as written
 * @param unit as written
 * @param details what else it says
 */
record RawResult(
    Fields fields, Sample sample, ResultsReader.Value value, String unit, Details details) {

  /** The result in the canonical unit; noted when it leaves the range of numbers there. */
  Optional<Measurement> measurement(Ratio ratio) {
    double canonical = ratio.toDouble(value.number());
    boolean isLost = canonical == 0 && value.number().signum() != 0;
    if (Double.isInfinite(canonical) || isLost) {
      fields.add(value.name(), InputTrouble.OVERFLOW, sample.analyte().unit().ucum());
      return Optional.empty();
    }
    return Optional.of(
        new Measurement(
            sample,
            value.in(canonical),
            details.cv(),
            details.assay(),
            details.at(),
            fields.place().path()));
  }
}
