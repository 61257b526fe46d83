package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Sign;
import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.UnitTrouble;
import cistern.panel.Draw;
import java.util.List;
import java.util.Optional;

/** One of the {@code draws} of a work-up: how and when a fluid was taken. */
final class DrawReader {

  private static final String PORTION = "portionMl";
  private static final String UNIT = "unit";
  private static final String PRESSURE_UNIT = "cm[H2O]";

  private final Conversions conversions;

  DrawReader(Conversions conversions) {
    this.conversions = conversions;
  }

  /** The draw, as far as it is described. */
  Draw read(Optional<Fields> given) {
    return given.map(this::read).orElse(Draw.UNKNOWN);
  }

  private Draw read(Fields fields) {
    Draw draw =
        new Draw(
            fields.time("at"),
            fields.time("receivedAt"),
            fields.text("appearance"),
            fields.text("site"),
            fields.number("volumeMl", Sign.NOT_NEGATIVE));
    checkPortion(fields);
    fields.object("openingPressure").ifPresent(this::checkPressure);
    fields.checkNoOthers();
    return draw;
  }

  /** The portion is kept: from which to which millilitre the sample was taken. */
  private static void checkPortion(Fields fields) {
    if (!fields.isGiven(PORTION)) {
      return;
    }
    boolean wasValid = fields.problems().isValid();
    List<Double> ends = fields.numbers(PORTION, Sign.NOT_NEGATIVE);
    boolean isRead = wasValid && fields.problems().isValid();
    if (isRead && (ends.size() != 2 || ends.getFirst() > ends.getLast())) {
      fields.add(PORTION, InputTrouble.ILL_FORMED, "a list of two volumes, the smaller first");
    }
  }

  /** The pressure is kept: a value that is not negative, in a unit of pressure. */
  private void checkPressure(Fields pressure) {
    pressure.checkGiven("value", UNIT);
    pressure.decimal("value", Sign.NOT_NEGATIVE);
    pressure
        .text(UNIT)
        .ifPresent(
            unit -> {
              Conversion conversion = conversions.conversion(unit, PRESSURE_UNIT);
              UnitTrouble.check(conversion, pressure, UNIT, "a pressure", PRESSURE_UNIT);
            });
    pressure.checkNoOthers();
  }
}
