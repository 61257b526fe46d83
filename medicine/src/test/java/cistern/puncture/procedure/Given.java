package cistern.puncture.procedure;

import cistern.measurement.Answer;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Invented procedures for tests, built one field at a time. */
public final class Given {

  /** The planned moment of every invented puncture. */
  public static final OffsetDateTime PLANNED = OffsetDateTime.parse("2031-03-02T10:00:00Z");

  private final Map<Question, Answer> answers = new EnumMap<>(Question.class);
  private final Map<Question, Double> months = new EnumMap<>(Question.class);
  private Optional<List<Antithrombotic>> drugs = Optional.empty();
  private OptionalDouble clearance = OptionalDouble.empty();
  private OptionalDouble score = OptionalDouble.empty();
  private Coagulation coagulation = Coagulation.UNKNOWN;
  private OptionalInt coma = OptionalInt.empty();
  private Before.Body body = new Before.Body(OptionalDouble.empty(), OptionalDouble.empty());
  private Needle needle = Needle.UNKNOWN;
  private TestOrder order = TestOrder.UNKNOWN;
  private Optional<OffsetDateTime> imagedAt = Optional.empty();

  public static Given nothing() {
    return new Given();
  }

  /** Every question that can be asked is answered with no. */
  public static Given allNo() {
    Given given = new Given();
    for (Question question : Question.values()) {
      given.answers.put(question, Answer.NO);
    }
    return given;
  }

  public Given with(Question question, Answer answer) {
    answers.put(question, answer);
    return this;
  }

  public Given yes(Question... questions) {
    for (Question question : questions) {
      answers.put(question, Answer.YES);
    }
    return this;
  }

  public Given monthsAgo(Question question, double ago) {
    months.put(question, ago);
    return this;
  }

  public Given taking(Antithrombotic... taken) {
    drugs = Optional.of(List.of(taken));
    return this;
  }

  public Given clearance(double value) {
    clearance = OptionalDouble.of(value);
    return this;
  }

  public Given score(double value) {
    score = OptionalDouble.of(value);
    return this;
  }

  public Given coagulation(Coagulation measured) {
    coagulation = measured;
    return this;
  }

  public Given coma(int value) {
    coma = OptionalInt.of(value);
    return this;
  }

  public Given bmi(double value) {
    body = new Before.Body(OptionalDouble.of(value), OptionalDouble.empty());
    return this;
  }

  public Given depth(double cm) {
    body = new Before.Body(OptionalDouble.empty(), OptionalDouble.of(cm));
    return this;
  }

  public Given needle(Needle.Tip tip) {
    needle = new Needle(tip, OptionalInt.empty());
    return this;
  }

  public Given order(TestOrder asked) {
    order = asked;
    return this;
  }

  public Given imagedAt(OffsetDateTime at) {
    imagedAt = Optional.of(at);
    return this;
  }

  public ProcedureAnswers answers() {
    return new ProcedureAnswers(answers);
  }

  public Before before() {
    return new Before(
        answers(),
        new Before.Times(Optional.of(PLANNED), imagedAt),
        coma,
        new Anticoagulation(coagulation, drugs, clearance, months, score),
        body,
        needle,
        order);
  }

  /** A drug taken some hours before the planned puncture. */
  public static Antithrombotic drug(String name, DoseClass dose, double hours) {
    return new Antithrombotic(
        name, dose, Optional.empty(), OptionalDouble.of(hours), Antithrombotic.Level.UNKNOWN);
  }

  /** A drug without a known time. */
  public static Antithrombotic drug(String name, DoseClass dose) {
    return new Antithrombotic(
        name, dose, Optional.empty(), OptionalDouble.empty(), Antithrombotic.Level.UNKNOWN);
  }

  /** A woman or man of some age. */
  public static PuncturedPerson subject(double age, String sex) {
    return new PuncturedPerson(
        OptionalDouble.of(age),
        Optional.of(sex),
        Answer.NO,
        Answer.UNKNOWN,
        PuncturedPerson.Draw.UNKNOWN);
  }

  /** Somebody of some age, if known. */
  public static PuncturedPerson aged(OptionalDouble age) {
    return new PuncturedPerson(
        age, Optional.empty(), Answer.UNKNOWN, Answer.UNKNOWN, PuncturedPerson.Draw.UNKNOWN);
  }
}
