package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.NumberRange;
import cistern.panel.Draw;
import cistern.puncture.procedure.Position;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** One of the {@code draws} of a work-up: how and when a fluid was taken. */
final class DrawReader {

  private static final String PORTION = "portionMl";

  private DrawReader() {}

  /** The draw, as far as it is described; the opening pressure is read with the procedure. */
  static Draw read(Optional<Fields> given) {
    return given.map(DrawReader::draw).orElse(Draw.UNKNOWN);
  }

  private static Draw draw(Fields fields) {
    Draw draw =
        new Draw(
            fields.time("at"),
            fields.time("receivedAt"),
            fields.text("appearance"),
            fields.text("site"),
            fields.number("volumeMl", NumberRange.NOT_NEGATIVE),
            looked(fields));
    checkPortion(fields);
    fields.keep("openingPressure");
    fields.checkNoOthers();
    return draw;
  }

  private static Draw.Looked looked(Fields fields) {
    List<String> positions = Stream.of(Position.values()).map(Position::code).toList();
    return new Draw.Looked(
        fields.answer("clotted"),
        fields.answer("atypicalCells"),
        fields.word("position", Position::parse, positions).map(Position::code));
  }

  /** The portion is kept: from which to which millilitre the sample was taken. */
  private static void checkPortion(Fields fields) {
    if (!fields.isGiven(PORTION)) {
      return;
    }
    boolean wasValid = fields.problems().isValid();
    List<Double> ends = fields.numbers(PORTION, NumberRange.NOT_NEGATIVE);
    boolean isRead = wasValid && fields.problems().isValid();
    if (isRead && (ends.size() != 2 || ends.getFirst() > ends.getLast())) {
      fields.add(PORTION, InputTrouble.ILL_FORMED, "a list of two volumes, the smaller first");
    }
  }
}
