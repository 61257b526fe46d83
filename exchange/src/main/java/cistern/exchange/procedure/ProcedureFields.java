package cistern.exchange.procedure;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.ucum.Conversions;
import cistern.measurement.Answer;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.QuestionGroup;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Reads {@code procedure}: what is known before, what was done, what followed. */
public final class ProcedureFields {

  private static final List<String> TIPS =
      Arrays.stream(Needle.Tip.values()).map(Needle.Tip::code).toList();
  private static final List<String> POSITIONS =
      Arrays.stream(Position.values()).map(Position::code).toList();

  private final Quantities quantities;

  private ProcedureFields(Quantities quantities) {
    this.quantities = quantities;
  }

  /** A reader that converts units. */
  public static ProcedureFields of(Conversions conversions) {
    return new ProcedureFields(new Quantities(conversions));
  }

  /** The procedure of a work-up; the opening pressure stands with the draw of the fluid. */
  public Procedure read(Fields workup) {
    Optional<Fields> procedure = workup.object("procedure");
    OptionalDouble pressure =
        structure(workup, "draws")
            .flatMap(draws -> structure(draws, "csf"))
            .map(draw -> quantities.read(draw, "openingPressure", "cm[H2O]", "a pressure"))
            .orElseGet(OptionalDouble::empty);
    Before before = part(procedure, "before").map(this::before).orElse(Before.UNKNOWN);
    Done done =
        part(procedure, "done")
            .map(fields -> done(fields, pressure))
            .orElseGet(() -> withPressure(pressure));
    After after =
        part(procedure, "after").map(new AfterFields(quantities)::read).orElse(After.UNKNOWN);
    procedure.ifPresent(Fields::checkNoOthers);
    return new Procedure(before, done, after);
  }

  /** A member that is an object; another type is noted by the reader of the draws. */
  private static Optional<Fields> structure(Fields fields, String name) {
    return fields
        .value(name)
        .filter(Json.Structure.class::isInstance)
        .flatMap(value -> fields.object(name));
  }

  private static Optional<Fields> part(Optional<Fields> procedure, String name) {
    return procedure.flatMap(fields -> fields.object(name));
  }

  private Before before(Fields fields) {
    return new BeforeFields(quantities).read(fields);
  }

  private static Done done(Fields fields, OptionalDouble pressure) {
    Map<Question, Answer> answers = new EnumMap<>(Question.class);
    answers.putAll(answers(fields, QuestionGroup.DONE));
    Needle needle = Needle.UNKNOWN;
    Optional<Fields> used = fields.object("needle");
    if (used.isPresent()) {
      needle = needle(used.get());
      answers.putAll(answers(used.get(), QuestionGroup.TECHNIQUE));
      used.get().checkNoOthers();
    }
    Done done =
        new Done(
            new ProcedureAnswers(answers),
            fields.text("operator"),
            fields.text("level"),
            fields.count("attempts"),
            fields.word("position", Position::parse, POSITIONS).orElse(Position.UNKNOWN),
            pressure,
            needle,
            fields.texts("complications"));
    fields.checkNoOthers();
    return done;
  }

  private static Done withPressure(OptionalDouble pressure) {
    Done nothing = Done.UNKNOWN;
    return new Done(
        nothing.answers(),
        nothing.operator(),
        nothing.level(),
        nothing.attempts(),
        nothing.position(),
        pressure,
        nothing.needle(),
        nothing.complications());
  }

  static Needle needle(Fields fields) {
    return new Needle(
        fields.word("tip", Needle.Tip::parse, TIPS).orElse(Needle.Tip.UNKNOWN),
        fields.count("gauge"));
  }

  /** The answers to the questions of a group; those not in the file stay unasked. */
  static Map<Question, Answer> answers(Fields fields, QuestionGroup group) {
    Map<Question, Answer> answers = new EnumMap<>(Question.class);
    for (Question question : Question.of(group)) {
      if (fields.isGiven(question.field())) {
        answers.put(question, fields.answer(question.field()));
      }
    }
    return answers;
  }

  /** A word of a fixed list in every item of a list; another word is noted. */
  static <T> List<T> words(
      Fields fields, String name, Function<String, Optional<T>> parse, List<String> allowed) {
    List<String> texts = fields.texts(name);
    List<T> words = texts.stream().map(parse).flatMap(Optional::stream).toList();
    if (words.size() < texts.size()) {
      fields.add(name, InputTrouble.NOT_A_WORD, String.join(", ", allowed));
    }
    return words;
  }
}
