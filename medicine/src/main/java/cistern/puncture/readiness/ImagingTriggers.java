package cistern.puncture.readiness;

import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.measurement.Answer;
import cistern.puncture.guideline.Guideline;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.Question;
import cistern.puncture.readiness.TriggerAnswer.Trigger;
import cistern.puncture.readiness.TriggerAnswer.Verdict;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/**
 * Signs of raised pressure against three guidelines, which were written for suspected meningitis.
 */
public final class ImagingTriggers {

  private static final String IDSA = "idsa-2004";
  private static final String ESCMID = "escmid-2016";
  private static final String UK = "uk-joint-2016";
  private static final String NOT_LISTED = "not listed";

  private final Facts facts;

  private ImagingTriggers(Facts facts) {
    this.facts = facts;
  }

  /** The triggers under some facts. */
  public static ImagingTriggers of(Facts facts) {
    return new ImagingTriggers(facts);
  }

  /** Every sign against every guideline. */
  public List<TriggerAnswer> check(Before before) {
    return Arrays.stream(Trigger.values())
        .flatMap(t -> List.of(IDSA, ESCMID, UK).stream().map(v -> answer(t, v, before)))
        .toList();
  }

  private TriggerAnswer answer(Trigger trigger, String guideline, Before before) {
    if (trigger == Trigger.CONSCIOUSNESS) {
      return consciousness(guideline, before.comaScore());
    }
    String key = "image-first." + guideline + "." + trigger.code();
    String text = facts.word(key);
    Verdict verdict =
        text.equals(NOT_LISTED)
            ? Verdict.NOT_LISTED
            : verdict(sign(trigger, guideline, before.answers()));
    return new TriggerAnswer(
        trigger, Guideline.of(facts, guideline), verdict, text, facts.grounds(key));
  }

  private static Answer sign(Trigger trigger, String guideline, ProcedureAnswers answers) {
    return switch (trigger) {
      case CONSCIOUSNESS -> Answer.UNKNOWN;
      case SEIZURE ->
          answers.answer(
              guideline.equals(UK) ? Question.CONTINUOUS_SEIZURES : Question.NEW_SEIZURE);
      case FOCAL_SIGNS -> answers.answer(Question.FOCAL_SIGNS);
      case PAPILLOEDEMA -> answers.answer(Question.PAPILLOEDEMA);
      case IMMUNOCOMPROMISE ->
          guideline.equals(IDSA)
              ? answers.any(List.of(Question.IMMUNOCOMPROMISED, Question.EARLIER_CNS_DISEASE))
              : answers.answer(Question.IMMUNOCOMPROMISED);
    };
  }

  private TriggerAnswer consciousness(String guideline, OptionalInt score) {
    String key = "image-first." + guideline + ".consciousness.score";
    boolean isBelow = facts.find(key + "-below").isPresent();
    String limitKey = key + (isBelow ? "-below" : "-up-to");
    double limit = facts.number(limitKey);
    Answer reduced = Answer.UNKNOWN;
    if (score.isPresent()) {
      boolean isLow = isBelow ? score.getAsInt() < limit : score.getAsInt() <= limit;
      reduced = isLow ? Answer.YES : Answer.NO;
    }
    String text = "Glasgow coma scale " + (isBelow ? "< " : "≤ ") + Printed.decimals(limit, 0);
    return new TriggerAnswer(
        Trigger.CONSCIOUSNESS,
        Guideline.of(facts, guideline),
        verdict(reduced),
        text,
        facts.grounds(limitKey));
  }

  private static Verdict verdict(Answer sign) {
    return switch (sign) {
      case YES -> Verdict.IMAGE_FIRST;
      case NO -> Verdict.NOT_TRIGGERED;
      case UNKNOWN -> Verdict.ASK;
    };
  }
}
