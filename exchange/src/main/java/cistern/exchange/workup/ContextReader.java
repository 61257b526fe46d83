package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.Json;
import cistern.measurement.Answer;
import cistern.panel.Circumstance;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * The {@code context} of a work-up. Each circumstance is {@code yes}, {@code no} or {@code
 * unknown}, or an object with that {@code answer} and the time {@code at} which it holds.
 */
final class ContextReader {

  private ContextReader() {}

  /** What is known of each circumstance that is named. */
  static Map<Circumstance, Answer> read(Optional<Fields> given) {
    Map<Circumstance, Answer> answers = new EnumMap<>(Circumstance.class);
    given.ifPresent(
        fields -> {
          for (Circumstance circumstance : Circumstance.values()) {
            if (fields.isGiven(circumstance.code())) {
              answers.put(circumstance, answer(fields, circumstance.code()));
            }
          }
          fields.time("at");
          fields.checkNoOthers();
        });
    return answers;
  }

  private static Answer answer(Fields fields, String name) {
    if (fields.value(name).filter(Json.Structure.class::isInstance).isEmpty()) {
      return fields.answer(name);
    }
    Fields dated = fields.object(name).orElseThrow();
    dated.checkGiven("answer");
    dated.time("at");
    Answer answer = dated.answer("answer");
    dated.checkNoOthers();
    return answer;
  }
}
