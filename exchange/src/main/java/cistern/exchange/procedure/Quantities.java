package cistern.exchange.procedure;

import cistern.exchange.json.Fields;
import cistern.exchange.json.NumberRange;
import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Ratio;
import cistern.exchange.ucum.UnitTrouble;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Quantities written as {@code {"value": 150, "unit": "10*9/L"}}.
 *
 * @param conversions between units
 */
record Quantities(Conversions conversions) {

  private static final String UNIT = "unit";

  /**
   * A quantity in the canonical unit.
   *
   * @param measured what it is, for a sentence
   */
  OptionalDouble read(Fields fields, String name, String canonical, String measured) {
    Optional<Fields> object = fields.object(name);
    if (object.isEmpty()) {
      return OptionalDouble.empty();
    }
    Fields quantity = object.get();
    quantity.checkGiven("value", UNIT);
    Optional<BigDecimal> value = quantity.decimal("value", NumberRange.NOT_NEGATIVE);
    Optional<String> unit = quantity.text(UNIT);
    quantity.checkNoOthers();
    Optional<Ratio> ratio =
        unit.flatMap(
            text -> {
              Conversion conversion = conversions.conversion(text, canonical);
              return UnitTrouble.check(conversion, quantity, UNIT, measured, canonical);
            });
    return value.isPresent() && ratio.isPresent()
        ? quantity.bounded("value", ratio.get().toDouble(value.get()), canonical)
        : OptionalDouble.empty();
  }
}
