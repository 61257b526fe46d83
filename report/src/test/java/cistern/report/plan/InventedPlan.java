package cistern.report.plan;

import cistern.bands.BandReport;
import cistern.fact.Facts;
import cistern.interpretation.Workup;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.panel.Panel;
import cistern.panel.Person;
import cistern.puncture.PuncturePlan;
import cistern.puncture.PuncturePlans;
import cistern.puncture.ResultEffect;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.Anticoagulation;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Coagulation;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.TestOrder;
import cistern.puncture.procedure.WarningSign;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Plans made up for tests: one of nobody known, and one of somebody with everything. */
public final class InventedPlan {

  /** When the invented puncture is planned and done. */
  static final OffsetDateTime AT = OffsetDateTime.parse("2031-03-02T10:00:00Z");

  static final Workup WORKUP =
      new Workup(
          "invented-1",
          Panel.of(Person.UNKNOWN, List.of()),
          new BandReport.NotReported(),
          List.of());

  private InventedPlan() {}

  /** Nothing known. */
  public static PuncturePlan empty() {
    return plan(Procedure.UNKNOWN, PuncturedPerson.UNKNOWN, List.of());
  }

  /** Anticoagulated, poor kidneys, fused spine; done, with a headache and a critical glucose. */
  public static PuncturePlan full() {
    PuncturedPerson subject =
        new PuncturedPerson(
            OptionalDouble.of(41),
            Optional.of("female"),
            Answer.UNKNOWN,
            Answer.YES,
            new PuncturedPerson.Draw(
                Optional.of(AT),
                OptionalDouble.of(1.8),
                Optional.of(Interval.of(1.8)),
                Optional.empty()));
    return plan(
        new Procedure(before(), done(), after()),
        subject,
        List.of(
            new ResultEffect("2017", ResultEffect.Effect.NO_EFFECT),
            new ResultEffect("2024", ResultEffect.Effect.NO_EFFECT)));
  }

  /** The same before the puncture. */
  public static PuncturePlan waiting() {
    return plan(
        new Procedure(before(), Done.UNKNOWN, After.UNKNOWN),
        PuncturedPerson.UNKNOWN,
        List.of(new ResultEffect("2017", ResultEffect.Effect.NO_EFFECT)));
  }

  private static PuncturePlan plan(
      Procedure procedure, PuncturedPerson subject, List<ResultEffect> effects) {
    return PuncturePlans.of(Facts.standard()).of(procedure, subject, effects);
  }

  private static Before before() {
    Antithrombotic apixaban =
        new Antithrombotic(
            "apixaban",
            DoseClass.HIGH,
            Optional.of(AT.minusHours(50)),
            OptionalDouble.empty(),
            Antithrombotic.Level.UNKNOWN);
    Antithrombotic other =
        new Antithrombotic(
            "an <unknown> drug & more",
            DoseClass.UNKNOWN,
            Optional.empty(),
            OptionalDouble.empty(),
            Antithrombotic.Level.UNKNOWN);
    return new Before(
        new ProcedureAnswers(
            Map.of(
                Question.LUMBAR_FUSION, Answer.YES,
                Question.LATEX, Answer.YES,
                Question.MRI_REVIEWED, Answer.YES,
                Question.SERUM_PLANNED, Answer.NO)),
        new Before.Times(Optional.of(AT), Optional.of(AT.minusDays(9))),
        OptionalInt.of(14),
        new Anticoagulation(
            new Coagulation(
                OptionalDouble.of(45),
                OptionalDouble.of(1.2),
                OptionalDouble.empty(),
                Optional.of(AT)),
            Optional.of(List.of(apixaban, other)),
            OptionalDouble.of(28),
            Map.of(),
            OptionalDouble.empty()),
        new Before.Body(OptionalDouble.of(41), OptionalDouble.empty()),
        new Needle(Needle.Tip.ATRAUMATIC, OptionalInt.of(22)),
        TestOrder.UNKNOWN);
  }

  private static Done done() {
    return new Done(
        new ProcedureAnswers(Map.of(Question.TRAUMATIC, Answer.NO)),
        Optional.of("Dr Invented"),
        Optional.of("L4/5"),
        OptionalInt.of(2),
        Position.LATERAL,
        OptionalDouble.of(24),
        new Needle(Needle.Tip.ATRAUMATIC, OptionalInt.of(22)),
        List.of("root pain"));
  }

  private static After after() {
    HeadacheRecord headache =
        new HeadacheRecord(
            Answer.YES,
            new ProcedureAnswers(Map.of(Question.WORSE_UPRIGHT, Answer.YES)),
            Map.of(WarningSign.NOT_EASING_LYING, Answer.YES, WarningSign.FEVER, Answer.NO),
            Optional.of(AT.plusHours(20)),
            Optional.empty(),
            List.of(new HeadacheRecord.Day(1, 6)));
    After.SentTest culture =
        new After.SentTest(
            CsfTest.CULTURE,
            Optional.of(AT),
            Optional.empty(),
            Optional.empty(),
            Answer.UNKNOWN,
            List.of(new After.Told("ward", Optional.of(AT))));
    After.SentTest chemistry =
        new After.SentTest(
            CsfTest.CHEMISTRY,
            Optional.of(AT),
            Optional.empty(),
            Optional.of(AT.plusHours(1)),
            Answer.UNKNOWN,
            List.of(
                new After.Told("Dr Invented", Optional.of(AT.plusMinutes(80))),
                new After.Told("nurse", Optional.empty())));
    return new After(
        Optional.of(AT.plusDays(9)),
        Optional.of(headache),
        List.of(culture, chemistry),
        Optional.of("Ward 5, 01234"));
  }
}
