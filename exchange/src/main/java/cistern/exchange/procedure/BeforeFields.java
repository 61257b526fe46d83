package cistern.exchange.procedure;

import cistern.exchange.json.Fields;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.json.NumberRange;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Anticoagulation;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Coagulation;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.PunctureQuestion;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.QuestionGroup;
import cistern.puncture.procedure.TestOrder;
import cistern.puncture.procedure.TubeTemplate;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * Reads {@code procedure.before}.
 *
 * @param quantities with their units
 */
record BeforeFields(Quantities quantities) {

  private static final int LEAST_COMA_SCORE = 3;
  private static final int MOST_COMA_SCORE = 15;
  private static final String MONTHS_AGO = "MonthsAgo";
  private static final String LAST_DOSE = "lastDoseAt";
  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

  private static final List<String> QUESTIONS =
      Arrays.stream(PunctureQuestion.values()).map(PunctureQuestion::code).toList();
  private static final List<String> TESTS =
      Arrays.stream(CsfTest.values()).map(CsfTest::code).toList();
  private static final List<String> TEMPLATES =
      Arrays.stream(TubeTemplate.values()).map(TubeTemplate::code).toList();
  private static final List<String> DOSES =
      Arrays.stream(DoseClass.values()).map(DoseClass::code).toList();

  Before read(Fields fields) {
    Map<Question, Answer> answers = new EnumMap<>(Question.class);
    answers.putAll(ProcedureFields.answers(fields, QuestionGroup.ARRANGEMENTS));
    OptionalInt coma = signs(fields, answers);
    Optional<OffsetDateTime> imagedAt = imaging(fields, answers);
    Optional<OffsetDateTime> plannedAt = fields.time("plannedAt");
    ZoneOffset offset = plannedAt.map(OffsetDateTime::getOffset).orElse(ZoneOffset.UTC);
    Anticoagulation anticoagulation = anticoagulation(fields, answers, offset);
    Before.Body body = spine(fields, answers);
    simple(fields, "allergies", QuestionGroup.ALLERGIES, answers);
    simple(fields, "history", QuestionGroup.HISTORY, answers);
    Needle needle = needle(fields, answers);
    Before before =
        new Before(
            new ProcedureAnswers(answers),
            new Before.Times(plannedAt, imagedAt),
            coma,
            anticoagulation,
            body,
            needle,
            order(fields));
    fields.checkNoOthers();
    return before;
  }

  private static OptionalInt signs(Fields fields, Map<Question, Answer> answers) {
    Optional<Fields> signs = fields.object("signs");
    if (signs.isEmpty()) {
      return OptionalInt.empty();
    }
    answers.putAll(ProcedureFields.answers(signs.get(), QuestionGroup.SIGNS));
    OptionalInt score = signs.get().count("glasgowComaScale");
    boolean isOutside =
        score.isPresent()
            && (score.getAsInt() < LEAST_COMA_SCORE || score.getAsInt() > MOST_COMA_SCORE);
    if (isOutside) {
      signs.get().add("glasgowComaScale", InputTrouble.ILL_FORMED, "a whole number from 3 to 15");
    }
    signs.get().checkNoOthers();
    return isOutside ? OptionalInt.empty() : score;
  }

  private static Optional<OffsetDateTime> imaging(Fields fields, Map<Question, Answer> answers) {
    Optional<Fields> imaging = fields.object("imaging");
    imaging.ifPresent(f -> answers.putAll(ProcedureFields.answers(f, QuestionGroup.IMAGING)));
    Optional<OffsetDateTime> at = imaging.flatMap(f -> f.time("at"));
    imaging.ifPresent(Fields::checkNoOthers);
    return at;
  }

  private static void simple(
      Fields fields, String name, QuestionGroup group, Map<Question, Answer> answers) {
    Optional<Fields> part = fields.object(name);
    part.ifPresent(f -> answers.putAll(ProcedureFields.answers(f, group)));
    part.ifPresent(Fields::checkNoOthers);
  }

  private static Before.Body spine(Fields fields, Map<Question, Answer> answers) {
    Optional<Fields> spine = fields.object("spine");
    if (spine.isEmpty()) {
      return new Before.Body(OptionalDouble.empty(), OptionalDouble.empty());
    }
    answers.putAll(ProcedureFields.answers(spine.get(), QuestionGroup.SPINE));
    Before.Body body =
        new Before.Body(
            spine.get().number("bmi", NumberRange.POSITIVE),
            spine.get().number("skinToCsfCm", NumberRange.POSITIVE));
    spine.get().checkNoOthers();
    return body;
  }

  private static Needle needle(Fields fields, Map<Question, Answer> answers) {
    Optional<Fields> planned = fields.object("needle");
    if (planned.isEmpty()) {
      return Needle.UNKNOWN;
    }
    answers.putAll(ProcedureFields.answers(planned.get(), QuestionGroup.TECHNIQUE));
    Needle needle = ProcedureFields.needle(planned.get());
    planned.get().checkNoOthers();
    return needle;
  }

  private Anticoagulation anticoagulation(
      Fields fields, Map<Question, Answer> answers, ZoneOffset offset) {
    Coagulation coagulation =
        fields.object("coagulation").map(f -> coagulation(f, answers)).orElse(Coagulation.UNKNOWN);
    Map<Question, Double> months = new EnumMap<>(Question.class);
    Optional<Fields> thrombosis = fields.object("thrombosis");
    thrombosis.ifPresent(f -> thrombosis(f, answers, months));
    OptionalDouble score =
        thrombosis
            .map(f -> f.number("cha2ds2Vasc", NumberRange.NOT_NEGATIVE))
            .orElseGet(OptionalDouble::empty);
    thrombosis.ifPresent(Fields::checkNoOthers);
    return new Anticoagulation(
        coagulation,
        antithrombotics(fields, offset),
        quantities.read(fields, "creatinineClearance", "mL/min", "a creatinine clearance"),
        months,
        score);
  }

  private static void thrombosis(
      Fields fields, Map<Question, Answer> answers, Map<Question, Double> months) {
    answers.putAll(ProcedureFields.answers(fields, QuestionGroup.THROMBOSIS));
    for (Question question : Question.of(QuestionGroup.THROMBOSIS)) {
      fields
          .number(question.field() + MONTHS_AGO, NumberRange.NOT_NEGATIVE)
          .ifPresent(ago -> months.put(question, ago));
    }
  }

  private Coagulation coagulation(Fields fields, Map<Question, Answer> answers) {
    answers.putAll(ProcedureFields.answers(fields, QuestionGroup.BLEEDING));
    Coagulation coagulation =
        new Coagulation(
            quantities.read(fields, "platelets", "10*9/L", "a count of platelets"),
            fields.number("inr", NumberRange.POSITIVE),
            fields.number("apttRatio", NumberRange.POSITIVE),
            fields.time("at"));
    fields.checkNoOthers();
    return coagulation;
  }

  /** A missing list is unknown; an empty one says that nothing is taken. */
  private Optional<List<Antithrombotic>> antithrombotics(Fields fields, ZoneOffset offset) {
    List<Antithrombotic> taken = new ArrayList<>();
    fields.objects("antithrombotics").forEach(f -> antithrombotic(f, offset).ifPresent(taken::add));
    boolean isList =
        fields.value("antithrombotics").filter(Json.Sequence.class::isInstance).isPresent();
    return isList ? Optional.of(taken) : Optional.empty();
  }

  private Optional<Antithrombotic> antithrombotic(Fields fields, ZoneOffset offset) {
    fields.checkGiven("drug");
    Optional<String> drug = fields.text("drug");
    if (drug.isPresent() && drug.get().isBlank()) {
      fields.add("drug", InputTrouble.BLANK);
    }
    Antithrombotic.Level level =
        new Antithrombotic.Level(
            quantities.read(fields, "level", "ng/mL", "a drug level"),
            quantities.read(fields, "antiXa", "[IU]/mL", "an anti-Xa activity"),
            fields.answer("thrombinTimeNormal"));
    DoseClass dose = fields.word("doseClass", DoseClass::parse, DOSES).orElse(DoseClass.UNKNOWN);
    Optional<OffsetDateTime> at = lastDose(fields, offset);
    Optional<String> amount = fields.text("dose");
    OptionalDouble hours = fields.number("hoursSinceLastDose", NumberRange.NOT_NEGATIVE);
    fields.keep("indication");
    fields.checkNoOthers();
    return drug.filter(name -> !name.isBlank())
        .map(name -> new Antithrombotic(name, amount, dose, at, hours, level));
  }

  /** A time; a day without one counts from its end, so that the interval is the shortest. */
  private static Optional<OffsetDateTime> lastDose(Fields fields, ZoneOffset offset) {
    Optional<String> text =
        fields
            .value(LAST_DOSE)
            .filter(Json.Text.class::isInstance)
            .flatMap(v -> fields.text(LAST_DOSE));
    return text.filter(t -> DAY.matcher(t).matches()).isPresent()
        ? endOfDay(fields, text.get(), offset)
        : fields.time(LAST_DOSE);
  }

  private static Optional<OffsetDateTime> endOfDay(Fields fields, String text, ZoneOffset offset) {
    try {
      LocalDate day = LocalDate.parse(text);
      return Optional.of(day.plusDays(1).atStartOfDay().atOffset(offset));
    } catch (DateTimeParseException e) {
      fields.add(LAST_DOSE, InputTrouble.NOT_A_TIME);
      return Optional.empty();
    }
  }

  private static TestOrder order(Fields fields) {
    return new TestOrder(
        fields.word("question", PunctureQuestion::parse, QUESTIONS),
        ProcedureFields.words(fields, "tests", CsfTest::parse, TESTS),
        fields.word("tubeTemplate", TubeTemplate::parse, TEMPLATES),
        fields.number("volumeMl", NumberRange.NOT_NEGATIVE));
  }
}
