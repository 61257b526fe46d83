package cistern.puncture.readiness;

import static cistern.puncture.procedure.Question.BLEEDING_DISORDER;
import static cistern.puncture.procedure.Question.CARDIORESPIRATORY;
import static cistern.puncture.procedure.Question.CHANGED_SINCE_SCAN;
import static cistern.puncture.procedure.Question.CONSENT;
import static cistern.puncture.procedure.Question.DECLINED;
import static cistern.puncture.procedure.Question.DYSRAPHISM;
import static cistern.puncture.procedure.Question.HYDROCEPHALUS;
import static cistern.puncture.procedure.Question.LAMINECTOMY;
import static cistern.puncture.procedure.Question.LUMBAR_FUSION;
import static cistern.puncture.procedure.Question.MASS_EFFECT;
import static cistern.puncture.procedure.Question.MRI_REVIEWED;
import static cistern.puncture.procedure.Question.POSTERIOR_FOSSA_LESION;
import static cistern.puncture.procedure.Question.SERUM_PLANNED;
import static cistern.puncture.procedure.Question.SITE_INFECTION;
import static cistern.puncture.procedure.Question.SPINAL_BLOCK;
import static cistern.puncture.procedure.Question.SPINE_ANOMALY;
import static cistern.puncture.procedure.Question.TONSILLAR_DESCENT;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.QuestionGroup;
import cistern.puncture.readiness.TriggerAnswer.Trigger;
import cistern.puncture.readiness.TriggerAnswer.Verdict;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What is there, what is open and what was looked at. Never that all is clear: an unanswered
 * question stays open.
 */
public final class Readiness {

  private static final List<Question> MASS =
      List.of(MASS_EFFECT, HYDROCEPHALUS, TONSILLAR_DESCENT, POSTERIOR_FOSSA_LESION);
  private static final List<Question> AT_SITE = List.of(LUMBAR_FUSION, LAMINECTOMY, SPINE_ANOMALY);

  private final Facts facts;
  private final ImagingTriggers triggers;

  private Readiness(Facts facts) {
    this.facts = facts;
    triggers = ImagingTriggers.of(facts);
  }

  /** The list under some facts. */
  public static Readiness of(Facts facts) {
    return new Readiness(facts);
  }

  /** Every sign of raised pressure against every guideline. */
  public List<TriggerAnswer> triggers(Before before) {
    return triggers.check(before);
  }

  /** The precautions of head, site and spine. */
  public List<Precaution> check(Before before) {
    List<Precaution> all = new ArrayList<>();
    List<TriggerAnswer> answers = triggers.check(before);
    Arrays.stream(Trigger.values()).map(t -> trigger(t, answers)).forEach(all::add);
    all.add(any(before, "mass-or-raised-pressure", MASS));
    all.add(reviewed(before));
    all.add(one(before, "imaging-changed", CHANGED_SINCE_SCAN));
    all.add(one(before, "site-infection", SITE_INFECTION));
    all.add(one(before, "spinal-block", SPINAL_BLOCK));
    all.add(one(before, "cardiorespiratory", CARDIORESPIRATORY));
    all.add(any(before, "spine-at-site", AT_SITE));
    all.add(one(before, "dysraphism", DYSRAPHISM));
    all.add(one(before, "bleeding-disorder", BLEEDING_DISORDER));
    return all;
  }

  /** The precautions of the person and the visit. */
  public List<Precaution> arrangements(Before before, PuncturedPerson subject) {
    List<Precaution> all = new ArrayList<>();
    if (PregnancyQuestion.isAsked(facts, subject)) {
      all.add(of("pregnancy", subject.pregnancy(), "pregnancy"));
    }
    all.add(any(before, "allergy", Question.of(QuestionGroup.ALLERGIES)));
    all.add(done(before, "serum-not-planned", SERUM_PLANNED));
    all.add(done(before, "consent", CONSENT));
    all.add(one(before, "declined", DECLINED));
    return all;
  }

  private Precaution trigger(Trigger trigger, List<TriggerAnswer> answers) {
    List<TriggerAnswer> own = answers.stream().filter(a -> a.trigger() == trigger).toList();
    Grounds grounds =
        own.stream().map(TriggerAnswer::grounds).reduce(Grounds::and).orElse(Grounds.MEASURED);
    Precaution.State state = Precaution.State.CHECKED;
    if (own.stream().anyMatch(a -> a.verdict() == Verdict.IMAGE_FIRST)) {
      state = Precaution.State.PRESENT;
    } else if (own.stream().anyMatch(a -> a.verdict() == Verdict.ASK)) {
      state = Precaution.State.OPEN;
    }
    return new Precaution(trigger.code(), state, triggerText(trigger, own, state), grounds);
  }

  private static String triggerText(
      Trigger trigger, List<TriggerAnswer> own, Precaution.State state) {
    String each =
        own.stream()
            .map(a -> a.guideline().title() + ": " + toText(a.verdict()) + " (" + a.text() + ")")
            .collect(Collectors.joining("; "));
    return switch (state) {
      case PRESENT ->
          "Image first? " + each + ". Written for suspected meningitis; local policy decides.";
      case OPEN -> "Ask about " + trigger.term() + ". " + each + ".";
      case CHECKED -> "No guideline asks for imaging first because of " + trigger.term() + ".";
    };
  }

  private static String toText(Verdict verdict) {
    return switch (verdict) {
      case IMAGE_FIRST -> "image first";
      case NOT_TRIGGERED -> "not for this";
      case NOT_LISTED -> "no answer";
      case ASK -> "not known";
    };
  }

  private Precaution reviewed(Before before) {
    String code = "imaging-not-reviewed";
    String when =
        before
            .times()
            .imagedAt()
            .map(at -> ", scan of " + at.toLocalDate())
            .orElse(", the date of the scan is not recorded");
    return switch (before.answers().answer(MRI_REVIEWED)) {
      case YES -> Precaution.checked(facts, code, "Brain MRI reviewed" + when + ".");
      case NO -> Precaution.present(facts, code, "");
      case UNKNOWN -> Precaution.open(facts, code, facts.word("precaution." + code));
    };
  }

  private Precaution one(Before before, String code, Question question) {
    return of(code, before.answers().answer(question), question.term());
  }

  private Precaution any(Before before, String code, List<Question> questions) {
    List<Question> yes = before.answers().with(Answer.YES, questions);
    List<Question> open = before.answers().with(Answer.UNKNOWN, questions);
    if (!yes.isEmpty()) {
      String also = open.isEmpty() ? "" : " Not answered: " + terms(open) + ".";
      Precaution present = Precaution.present(facts, code, "Recorded: " + terms(yes) + ". ");
      return new Precaution(code, present.state(), present.text() + also, present.grounds());
    }
    return open.isEmpty()
        ? Precaution.checked(facts, code, "Not present: " + terms(questions) + ".")
        : Precaution.open(facts, code, "Ask: " + terms(open) + ".");
  }

  private Precaution of(String code, Answer answer, String term) {
    return switch (answer) {
      case YES -> Precaution.present(facts, code, "");
      case NO -> Precaution.checked(facts, code, "Not present: " + term + ".");
      case UNKNOWN -> Precaution.open(facts, code, "Ask: " + term + ".");
    };
  }

  /** Something that should be done: there when it is not. */
  private Precaution done(Before before, String code, Question question) {
    return switch (before.answers().answer(question)) {
      case YES -> Precaution.checked(facts, code, "Done or planned: " + question.term() + ".");
      case NO -> Precaution.present(facts, code, "");
      case UNKNOWN -> Precaution.open(facts, code, facts.word("precaution." + code));
    };
  }

  private static String terms(List<Question> questions) {
    return questions.stream().map(Question::term).collect(Collectors.joining(", "));
  }
}
