package cistern.puncture.bleeding;

import cistern.measurement.Answer;
import cistern.puncture.procedure.Anticoagulation;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Question;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One antithrombotic with everything a guideline may ask about.
 *
 * @param taken the drug as taken
 * @param before what is known beforehand
 * @param clearance of creatinine
 */
record Circumstances(Antithrombotic taken, Before before, Clearance clearance) {

  Anticoagulation anticoagulation() {
    return before.anticoagulation();
  }

  Antithrombotic.Level level() {
    return taken.level();
  }

  Answer inrNormal() {
    return before.answers().answer(Question.INR_NORMAL);
  }

  Answer apttNormal() {
    return before.answers().answer(Question.APTT_NORMAL);
  }

  OptionalDouble hours() {
    return taken.hoursBefore(before.times().plannedAt());
  }

  /** Whether the blood was taken on the calendar day of the puncture, at the puncture's offset. */
  boolean isBloodOfTheDay() {
    Optional<OffsetDateTime> planned = before.times().plannedAt();
    Optional<OffsetDateTime> blood = anticoagulation().coagulation().at();
    if (planned.isEmpty() || blood.isEmpty()) {
      return false;
    }
    LocalDate day = blood.get().withOffsetSameInstant(planned.get().getOffset()).toLocalDate();
    return day.equals(planned.get().toLocalDate());
  }
}
