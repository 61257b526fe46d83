package cistern.puncture.aftercare;

import cistern.bedside.Bedside;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.PuncturePlans;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.Coagulation;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.HeadacheRecord.BloodPressure;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.WarningSign;
import cistern.urgent.Urgency;
import cistern.urgent.Urgent;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Invented courses after a puncture, for the tests of what follows it. */
abstract class AfterCareCases {

  static final OffsetDateTime PUNCTURE = OffsetDateTime.parse("2031-03-02T10:00:00Z");
  static final PuncturePlans PLANS = PuncturePlans.of(Facts.standard());

  final Map<WarningSign, Answer> signs = new EnumMap<>(WarningSign.class);
  final Map<Question, Answer> answers = new EnumMap<>(Question.class);
  final List<HeadacheRecord.Day> days = new ArrayList<>();
  Answer present = Answer.YES;
  Optional<OffsetDateTime> onset = Optional.of(PUNCTURE.plusHours(20));
  OffsetDateTime asOf = PUNCTURE.plusHours(60);
  BloodPressure pressure = BloodPressure.UNKNOWN;
  Given before = Given.allNo().yes(Question.CONSENT).taking().coagulation(blood(200));
  PuncturedPerson person = Given.subject(34, "female");
  OptionalDouble opening = OptionalDouble.empty();
  Bedside bedside = Bedside.UNKNOWN;
  Urgent fluid = Urgent.NONE;

  static Coagulation blood(double platelets) {
    return new Coagulation(
        OptionalDouble.of(platelets),
        OptionalDouble.of(1),
        OptionalDouble.empty(),
        Optional.empty());
  }

  AfterCareCases allNo() {
    for (WarningSign sign : WarningSign.values()) {
      signs.put(sign, Answer.NO);
    }
    answers.put(Question.WORSE_UPRIGHT, Answer.YES);
    answers.put(Question.BETTER_LYING, Answer.YES);
    answers.put(Question.BETTER_EXPLANATION, Answer.NO);
    answers.put(Question.PATCH_CONSENT, Answer.YES);
    for (Question question :
        List.of(
            Question.BACTERAEMIA,
            Question.INFLAMMATION,
            Question.BLOOD_CANCER,
            Question.HIV_WITH_INFECTION)) {
      answers.put(question, Answer.NO);
    }
    opening = OptionalDouble.of(14);
    return this;
  }

  AfterCareCases yes(WarningSign... which) {
    for (WarningSign sign : which) {
      signs.put(sign, Answer.YES);
    }
    return this;
  }

  AfterCareCases severity(int day, double severity) {
    days.add(new HeadacheRecord.Day(day, severity));
    return this;
  }

  AfterCare care() {
    HeadacheRecord headache =
        new HeadacheRecord(
            present, new ProcedureAnswers(answers), signs, onset, Optional.empty(), days, pressure);
    Done done =
        new Done(
            ProcedureAnswers.NONE,
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            Position.LATERAL,
            opening,
            Needle.UNKNOWN,
            List.of());
    PuncturedPerson drawn =
        new PuncturedPerson(
            person.ageYears(),
            person.sex(),
            person.pregnancy(),
            person.headacheDisorder(),
            new PuncturedPerson.Draw(
                Optional.of(PUNCTURE), OptionalDouble.empty(), Optional.empty(), Optional.empty()),
            person.kidney(),
            new PuncturedPerson.Beside(bedside, fluid));
    return PLANS.afterCare(
        new Procedure(
            before.before(),
            done,
            new After(Optional.of(asOf), Optional.of(headache), List.of(), Optional.empty())),
        drawn);
  }

  List<String> holding() {
    return care().holding().stream().map(Urgency::code).toList();
  }

  List<String> held() {
    return care().patch().because().stream().map(AfterCare.Reason::code).toList();
  }
}
