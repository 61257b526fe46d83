package cistern.exchange.workup;

import cistern.exchange.json.Fields;
import cistern.exchange.json.Json;
import cistern.measurement.Answer;
import cistern.panel.Circumstance;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * The {@code context} of a work-up. Each circumstance is {@code yes}, {@code no} or {@code
 * unknown}, or an object with that {@code answer} and the time {@code at} which it holds.
 */
final class ContextReader {

  private ContextReader() {}

  /**
   * What is known of each circumstance that is named.
   *
   * @param answers whether it holds
   * @param times when it held, where that is said
   */
  record Context(Map<Circumstance, Answer> answers, Map<Circumstance, OffsetDateTime> times) {}

  static Context read(Optional<Fields> given) {
    Context context =
        new Context(new EnumMap<>(Circumstance.class), new EnumMap<>(Circumstance.class));
    given.ifPresent(
        fields -> {
          for (Circumstance circumstance : Circumstance.values()) {
            if (fields.isGiven(circumstance.code())) {
              read(fields, circumstance, context);
            }
          }
          fields.time("at");
          fields.checkNoOthers();
        });
    return context;
  }

  private static void read(Fields fields, Circumstance circumstance, Context context) {
    String name = circumstance.code();
    if (fields.value(name).filter(Json.Structure.class::isInstance).isEmpty()) {
      context.answers.put(circumstance, fields.answer(name));
      return;
    }
    Fields dated = fields.object(name).orElseThrow();
    dated.checkGiven("answer");
    dated.time("at").ifPresent(at -> context.times.put(circumstance, at));
    context.answers.put(circumstance, dated.answer("answer"));
    dated.checkNoOthers();
  }
}
