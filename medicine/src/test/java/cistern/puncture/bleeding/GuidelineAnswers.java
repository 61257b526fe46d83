package cistern.puncture.bleeding;

import cistern.fact.Facts;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;

/** What the guidelines answer to invented people, under the standard facts. */
final class GuidelineAnswers {

  static final Facts FACTS = Facts.standard();

  private static final Antithrombotics ANTITHROMBOTICS = Antithrombotics.of(FACTS);

  private GuidelineAnswers() {}

  static AntithromboticPlan plan(Given given) {
    return ANTITHROMBOTICS.check(given.before()).getFirst();
  }

  static GuidelineAnswer answer(AntithromboticPlan plan, String voice) {
    return plan.answers().stream()
        .filter(a -> a.voice().code().equals(voice))
        .findFirst()
        .orElseThrow();
  }

  static GuidelineAnswer answer(
      String voice, String drug, DoseClass dose, double clearance, double hours) {
    return answer(
        plan(Given.nothing().taking(Given.drug(drug, dose, hours)).clearance(clearance)), voice);
  }
}
