package cistern.interpretation;

import cistern.analysis.Puncture;
import cistern.criteria.CriteriaResult;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.PunctureQuestion;
import cistern.puncture.procedure.Question;
import cistern.urgent.Alerts;
import cistern.urgent.ClinicalSetting;
import cistern.urgent.Observed;
import cistern.urgent.Stops;
import cistern.weighing.ClinicalPicture;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Brings together what the urgent rules and the stops read of a work-up. */
final class AtFirst {

  private static final String DRY = "dry";

  private AtFirst() {}

  static Observed observed(Workup workup, Puncture puncture, Facts facts) {
    ClinicalPicture clinical = workup.clinical();
    return new Observed(
        puncture.panel(),
        puncture.findings(),
        puncture.bands(),
        clinical.serology(),
        clinical.bedside(),
        setting(workup),
        facts);
  }

  /** The alerts with what is atypical although an edition is met. */
  static Alerts whenMet(Alerts before, Observed observed, List<CriteriaResult> criteria) {
    boolean isMet = criteria.stream().anyMatch(CriteriaResult::isMet);
    return isMet ? before.with(Stops.whenMet(observed)) : before;
  }

  private static ClinicalSetting setting(Workup workup) {
    Before before = workup.procedure().before();
    Done done = workup.procedure().done();
    Presentation presentation = workup.clinical().evidence().presentation();
    return new ClinicalSetting(
        done.openingPressure(),
        before.comaScore(),
        new ClinicalSetting.Body(done.answers().answer(Question.SEDATION), before.body().bmi()),
        before.answers().answer(Question.FOCAL_SIGNS),
        dryTap(done),
        isForInfection(workup),
        new ClinicalSetting.Course(
            presentation == Presentation.ATTACK,
            presentation == Presentation.PROGRESSION,
            otherIllness(workup)));
  }

  private static boolean isForInfection(Workup workup) {
    boolean isAsked =
        workup
            .procedure()
            .before()
            .order()
            .question()
            .filter(q -> q == PunctureQuestion.INFECTION)
            .isPresent();
    Optional<String> said =
        workup.remarks().question().map(q -> q.strip().toLowerCase(Locale.ROOT));
    return isAsked || said.equals(Optional.of(PunctureQuestion.INFECTION.code()));
  }

  private static Answer dryTap(Done done) {
    boolean isDry =
        done.complications().stream().anyMatch(c -> c.toLowerCase(Locale.ROOT).contains(DRY));
    if (isDry) {
      return Answer.YES;
    }
    return done.complications().isEmpty() ? Answer.UNKNOWN : Answer.NO;
  }

  private static Answer otherIllness(Workup workup) {
    Answer vascular = workup.clinical().evidence().answer(Item.VASCULAR_RISK);
    Answer headache = workup.clinical().evidence().answer(Item.HEADACHE_DISORDER);
    ProcedureAnswers history = workup.procedure().before().answers();
    boolean isYes =
        vascular.isYes() || headache.isYes() || history.isYes(Question.HEADACHE_DISORDER);
    if (isYes) {
      return Answer.YES;
    }
    return vascular.isKnown() && headache.isKnown() ? Answer.NO : Answer.UNKNOWN;
  }
}
