package cistern.puncture.readiness;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.PuncturedPerson;

/** Whether pregnancy is asked about: never of men, nor outside the ages in which it happens. */
final class PregnancyQuestion {

  private PregnancyQuestion() {}

  static boolean isAsked(Facts facts, PuncturedPerson person) {
    boolean isOfAge =
        person.ageYears().isEmpty()
            || (person.ageYears().getAsDouble() >= facts.number("pregnancy.asked-from")
                && person.ageYears().getAsDouble() < facts.number("pregnancy.asked-below"));
    return person.pregnancy().isYes() || (isOfAge && person.female() != Answer.NO);
  }
}
