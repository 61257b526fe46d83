package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Shown;
import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Ratio;
import cistern.exchange.ucum.UnitTrouble;
import cistern.measurement.Analyte;
import cistern.measurement.CanonicalUnit;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * The units of the results of one work-up. A specific antibody may have any unit; its results in
 * both fluids are brought to the unit of the one that comes first.
 */
final class UnitReader {

  private static final String UNIT = "unit";

  private final Conversions conversions;
  private final Map<Analyte, String> arbitrary = new EnumMap<>(Analyte.class);

  UnitReader(Conversions conversions) {
    this.conversions = conversions;
  }

  /** The factor into the analyte's unit; empty, with a problem noted, when there is none. */
  Optional<Ratio> read(Analyte analyte, String unit, Fields fields) {
    if (analyte.unit() == CanonicalUnit.ARBITRARY) {
      return readArbitrary(analyte, unit, fields);
    }
    return UnitTrouble.check(
        conversions.conversion(unit, analyte), fields, UNIT, analyte.term(), analyte.unit().ucum());
  }

  private Optional<Ratio> readArbitrary(Analyte analyte, String unit, Fields fields) {
    String first = arbitrary.getOrDefault(analyte, unit);
    if (!conversions.isUnit(unit)) {
      return UnitTrouble.check(
          conversions.conversion(unit), fields, UNIT, analyte.term(), analyte.unit().ucum());
    }
    arbitrary.put(analyte, first);
    Conversion conversion = conversions.conversion(unit, first);
    if (conversion instanceof Conversion.By by) {
      return Optional.of(by.ratio());
    }
    fields.add(
        UNIT,
        InputTrouble.OTHER_DIMENSION_THAN_PAIR,
        Shown.of(unit).text(),
        Shown.of(first).text());
    return Optional.empty();
  }
}
