package cistern.exchange.procedure;

import cistern.exchange.json.Fields;
import cistern.exchange.json.NumberRange;
import cistern.measurement.Answer;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.After.SentTest;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.HeadacheRecord.BloodPressure;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.QuestionGroup;
import cistern.puncture.procedure.WarningSign;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads {@code procedure.after}.
 *
 * @param quantities with their units
 */
record AfterFields(Quantities quantities) {

  private static final List<String> TESTS =
      Arrays.stream(CsfTest.values()).map(CsfTest::code).toList();

  After read(Fields fields) {
    List<SentTest> sent = new ArrayList<>();
    fields.objects("sent").forEach(f -> sent(f).ifPresent(sent::add));
    After after =
        new After(
            fields.time("asOf"),
            fields.object("headache").map(this::headache),
            sent,
            fields.text("contact"));
    fields.checkNoOthers();
    return after;
  }

  private HeadacheRecord headache(Fields fields) {
    Map<WarningSign, Answer> flags = new EnumMap<>(WarningSign.class);
    Optional<Fields> asked = fields.object("redFlags");
    asked.ifPresent(f -> redFlags(f, flags));
    HeadacheRecord headache =
        new HeadacheRecord(
            fields.answer("present"),
            new ProcedureAnswers(ProcedureFields.answers(fields, QuestionGroup.HEADACHE)),
            flags,
            fields.time("onsetAt"),
            fields.time("endedAt"),
            days(fields),
            fields.object("bloodPressure").map(this::pressure).orElse(BloodPressure.UNKNOWN));
    fields.checkNoOthers();
    return headache;
  }

  private BloodPressure pressure(Fields fields) {
    BloodPressure pressure =
        new BloodPressure(
            quantities.read(fields, "systolic", "mm[Hg]", "a pressure"),
            quantities.read(fields, "diastolic", "mm[Hg]", "a pressure"));
    fields.checkNoOthers();
    return pressure;
  }

  private static void redFlags(Fields fields, Map<WarningSign, Answer> flags) {
    for (WarningSign flag : WarningSign.values()) {
      if (fields.isGiven(flag.field())) {
        flags.put(flag, fields.answer(flag.field()));
      }
    }
    fields.checkNoOthers();
  }

  private static List<HeadacheRecord.Day> days(Fields fields) {
    List<HeadacheRecord.Day> days = new ArrayList<>();
    for (Fields each : fields.objects("days")) {
      each.checkGiven("day", "severity");
      OptionalInt day = each.count("day");
      OptionalDouble severity = each.number("severity", NumberRange.NOT_NEGATIVE);
      each.checkNoOthers();
      if (day.isPresent() && severity.isPresent()) {
        days.add(new HeadacheRecord.Day(day.getAsInt(), severity.getAsDouble()));
      }
    }
    return days;
  }

  private static Optional<SentTest> sent(Fields fields) {
    fields.checkGiven("test");
    Optional<CsfTest> test = fields.word("test", CsfTest::parse, TESTS);
    List<Told> told = new ArrayList<>();
    for (Fields each : fields.objects("told")) {
      each.checkGiven("who");
      each.text("who").ifPresent(who -> told.add(new Told(who, each.time("at"))));
      each.keep("at");
      each.checkNoOthers();
    }
    Optional<OffsetDateTime> sentAt = fields.time("sentAt");
    Optional<OffsetDateTime> dueAt = fields.time("dueAt");
    Optional<OffsetDateTime> receivedAt = fields.time("receivedAt");
    Answer positive = fields.answer("positive");
    fields.checkNoOthers();
    return test.map(t -> new SentTest(t, sentAt, dueAt, receivedAt, positive, told));
  }
}
