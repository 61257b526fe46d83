package cistern.puncture.bleeding;

import cistern.fact.Facts;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.PuncturedPerson;
import java.util.List;

/** What the guidelines answer to invented people, under the standard facts. */
final class GuidelineAnswers {

  static final Facts FACTS = Facts.standard();

  private static final Antithrombotics ANTITHROMBOTICS = Antithrombotics.of(FACTS);
  private static final DrugCheck DRUGS = DrugCheck.of(FACTS);

  private GuidelineAnswers() {}

  static AntithromboticPlan plan(Given given) {
    return plans(ANTITHROMBOTICS, FACTS, given.before()).getFirst();
  }

  static List<AntithromboticPlan> plans(Facts facts, Before before) {
    return plans(Antithrombotics.of(facts), facts, before);
  }

  private static List<AntithromboticPlan> plans(
      Antithrombotics antithrombotics, Facts facts, Before before) {
    TakenDrugs drugs = DRUGS.check(before.anticoagulation(), PuncturedPerson.UNKNOWN);
    return antithrombotics.check(
        drugs, before, Clearances.of(facts).check(before, PuncturedPerson.UNKNOWN));
  }

  static GuidelineAnswer answer(AntithromboticPlan plan, String guideline) {
    return plan.answers().stream()
        .filter(a -> a.guideline().code().equals(guideline))
        .findFirst()
        .orElseThrow();
  }

  static GuidelineAnswer answer(
      String guideline, String drug, DoseClass dose, double clearance, double hours) {
    return answer(
        plan(Given.nothing().taking(Given.drug(drug, dose, hours)).clearance(clearance)),
        guideline);
  }
}
