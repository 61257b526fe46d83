package cistern.puncture.aftercare;

import static cistern.puncture.procedure.ThreeValued.any;
import static cistern.puncture.procedure.ThreeValued.when;

import cistern.bedside.Sign;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.bleeding.TakenDrugs;
import cistern.puncture.headache.HeadacheTimes;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.WarningSign;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a person reports after a puncture, as the rules ask for it.
 *
 * @param procedure as given
 * @param person whose it is
 * @param drugs what is taken
 * @param headache as reported
 * @param times of the headache
 */
record Complaint(
    Procedure procedure,
    PuncturedPerson person,
    TakenDrugs drugs,
    HeadacheRecord headache,
    HeadacheTimes times) {

  static Complaint of(Procedure procedure, PuncturedPerson person, TakenDrugs drugs) {
    HeadacheRecord record = procedure.after().headache().orElse(HeadacheRecord.UNKNOWN);
    return new Complaint(
        procedure,
        person,
        drugs,
        record,
        HeadacheTimes.of(record, person.draw().at(), procedure.after().asOf()));
  }

  Answer sign(WarningSign sign) {
    return headache.answer(sign);
  }

  Answer asked(Question question) {
    return headache.answers().answer(question);
  }

  Answer before(Question question) {
    return procedure.before().answers().answer(question);
  }

  Answer bedside(Sign sign) {
    return person.beside().bedside().answer(sign);
  }

  /** Whether there is a headache: as said, else by what is told of it. */
  Answer present() {
    boolean isTold =
        headache.onsetAt().isPresent() || headache.days().stream().anyMatch(d -> d.severity() > 0);
    return headache.present().isKnown() || !isTold ? headache.present() : Answer.YES;
  }

  /** The severity on the last day told, 0 to 10, while the headache lasts. */
  OptionalDouble severity() {
    if (present() == Answer.NO || headache.endedAt().isPresent()) {
      return OptionalDouble.empty();
    }
    Optional<HeadacheRecord.Day> last =
        headache.days().stream().max(Comparator.comparingInt(HeadacheRecord.Day::day));
    return last.map(day -> OptionalDouble.of(day.severity())).orElseGet(OptionalDouble::empty);
  }

  /** The day of the first headache after the puncture, 0 the day itself. */
  OptionalDouble firstDay() {
    OptionalDouble byTime = times.dayOfOnset();
    if (byTime.isPresent()) {
      return byTime;
    }
    return headache.days().stream()
        .filter(d -> d.severity() > 0)
        .mapToDouble(HeadacheRecord.Day::day)
        .min();
  }

  /** Hours that the headache has lasted. */
  OptionalDouble hours() {
    OptionalDouble byTime = times.hoursSoFar();
    if (byTime.isPresent()) {
      return byTime;
    }
    OptionalDouble first = firstDay();
    OptionalDouble last =
        headache.days().stream()
            .filter(d -> d.severity() > 0)
            .mapToDouble(HeadacheRecord.Day::day)
            .max();
    return first.isPresent() && last.isPresent() && last.getAsDouble() > first.getAsDouble()
        ? OptionalDouble.of((last.getAsDouble() - first.getAsDouble()) * 24)
        : OptionalDouble.empty();
  }

  /** Whether the platelets lie under a limit. */
  Answer plateletsUnder(double limit) {
    return when(
        procedure.before().anticoagulation().coagulation().platelets(), value -> value < limit);
  }

  /** Whether the blood pressure reaches a limit; both numbers are asked for. */
  Answer pressureFrom(Facts facts) {
    return any(
        when(headache.systolic(), v -> v >= facts.number("after-care.systolic-from")),
        when(headache.diastolic(), v -> v >= facts.number("after-care.diastolic-from")));
  }
}
