package cistern.exchange.ucum;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Shown;
import java.util.Optional;

/** Unusable units as problems of an input. */
public final class UnitTrouble {

  private UnitTrouble() {}

  /**
   * The factor of a conversion; empty, with a problem noted at a field, when there is none.
   *
   * @param conversion what became of the unit
   * @param fields where the unit stands
   * @param field the name of the field with the unit
   * @param measured what is measured, in words
   * @param needed a unit that would do
   */
  public static Optional<Ratio> check(
      Conversion conversion, Fields fields, String field, String measured, String needed) {
    return switch (conversion) {
      case Conversion.By by -> Optional.of(by.ratio());
      case Conversion.Unknown unknown -> {
        fields.add(
            field, InputTrouble.UNKNOWN_UNIT, shown(fields, field), question(unknown.meant()));
        yield Optional.empty();
      }
      case Conversion.OtherDimension other -> {
        fields.add(
            field,
            InputTrouble.OTHER_DIMENSION,
            shown(fields, field),
            measured,
            needed,
            question(other.meant()));
        yield Optional.empty();
      }
    };
  }

  private static String shown(Fields fields, String field) {
    return Shown.of(fields.text(field).orElse("")).text();
  }

  private static String question(Optional<String> meant) {
    return meant.map(unit -> " Perhaps “%s” is meant.".formatted(unit)).orElse("");
  }
}
