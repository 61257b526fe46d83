package cistern.puncture.headache;

import static cistern.puncture.procedure.Question.BETTER_EXPLANATION;
import static cistern.puncture.procedure.Question.BETTER_LYING;
import static cistern.puncture.procedure.Question.LEAK_ON_IMAGING;
import static cistern.puncture.procedure.Question.PATCHED;
import static cistern.puncture.procedure.Question.PRESSURE_LOW;
import static cistern.puncture.procedure.Question.WORSE_UPRIGHT;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.ProcedureAnswers;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Published definitions of headache after dural puncture. Posture is no criterion in the newest.
 */
final class Definitions {

  private static final String ONSET = "headache.onset.days";
  private static final String REMISSION = "headache.remission.days";
  private static final String POSTURE = "headache.posture.minutes";
  private static final String LOW = "pressure.low";

  private final Facts facts;

  Definitions(Facts facts) {
    this.facts = facts;
  }

  List<Definition> check(HeadacheRecord headache, HeadacheTimes times) {
    Judged beta = beta(headache, times);
    return List.of(
        new Definition(
            "ICHD-3 beta, 7.2.1", beta.met, beta.reason, facts.grounds(ONSET, REMISSION)),
        newest(headache.answers(), beta),
        postural(headache.answers()));
  }

  /** Within five days, not better explained, and gone within two weeks unless patched. */
  private Judged beta(HeadacheRecord headache, HeadacheTimes times) {
    List<Judged> parts = new ArrayList<>();
    parts.add(new Judged(headache.present(), text(headache.present(), "a headache")));
    parts.add(onset(times.daysToOnset()));
    Answer better = headache.answers().answer(BETTER_EXPLANATION);
    parts.add(
        new Judged(
            not(better),
            switch (better) {
              case YES -> "another cause explains it better";
              case NO -> "no better explanation";
              case UNKNOWN -> "whether another cause explains it better is not known";
            }));
    parts.add(course(headache.answers(), times));
    return Judged.all(parts);
  }

  private Judged onset(OptionalDouble days) {
    if (days.isEmpty()) {
      return new Judged(Answer.UNKNOWN, "when it began after the puncture is not known");
    }
    double limit = facts.number(ONSET);
    boolean isWithin = days.getAsDouble() >= 0 && days.getAsDouble() <= limit;
    String since = one(days.getAsDouble()) + " days after the puncture";
    return new Judged(isWithin ? Answer.YES : Answer.NO, "began " + since);
  }

  /** A course that is still young contradicts nothing. */
  private Judged course(ProcedureAnswers answers, HeadacheTimes times) {
    double limit = facts.number(REMISSION);
    OptionalDouble days = times.daysLasted();
    if (days.isEmpty()) {
      days = times.daysSoFar();
    }
    if (answers.isYes(PATCHED)) {
      return new Judged(Answer.YES, "a patch was done");
    }
    if (days.isPresent() && days.getAsDouble() > limit) {
      return new Judged(
          answers.answer(PATCHED) == Answer.NO ? Answer.NO : Answer.UNKNOWN,
          "longer than two weeks" + (answers.isOpen(PATCHED) ? ", and patched or not" : ""));
    }
    return new Judged(
        Answer.YES, times.daysLasted().isPresent() ? "gone within two weeks" : "course still open");
  }

  /** Also asks for a low pressure or a leak; without either test it is called clinical. */
  private Definition newest(ProcedureAnswers answers, Judged beta) {
    Answer shown = answers.any(List.of(PRESSURE_LOW, LEAK_ON_IMAGING));
    Judged test =
        new Judged(
            shown,
            switch (shown) {
              case YES -> "low pressure or a leak is shown";
              case NO -> "neither low pressure nor a leak is shown";
              case UNKNOWN ->
                  beta.met.isYes()
                      ? "pressure and leak not tested: clinical headache after dural puncture"
                      : "pressure and leak not tested";
            });
    Judged both = Judged.all(List.of(beta, test));
    return new Definition(
        "ICHD-3 2018, 7.2.1", both.met, both.reason, facts.grounds(ONSET, REMISSION, LOW));
  }

  private Definition postural(ProcedureAnswers answers) {
    Answer upright = answers.answer(WORSE_UPRIGHT);
    Answer lying = answers.answer(BETTER_LYING);
    Judged both =
        Judged.all(
            List.of(
                new Judged(upright, text(upright, WORSE_UPRIGHT.term())),
                new Judged(lying, text(lying, BETTER_LYING.term()))));
    return new Definition(
        "postural headache, Cochrane CD010807", both.met, both.reason, facts.grounds(POSTURE));
  }

  private static String text(Answer answer, String what) {
    return switch (answer) {
      case YES -> what;
      case NO -> "not " + what;
      case UNKNOWN -> what + ": not known";
    };
  }

  private static Answer not(Answer answer) {
    return switch (answer) {
      case YES -> Answer.NO;
      case NO -> Answer.YES;
      case UNKNOWN -> Answer.UNKNOWN;
    };
  }

  private static String one(double value) {
    return cistern.finding.Printed.decimals(value, 1);
  }

  private record Judged(Answer met, String reason) {

    /** No when any is no, yes when all are yes, else unknown; the reasons of that answer. */
    static Judged all(List<Judged> parts) {
      for (Answer first : List.of(Answer.NO, Answer.UNKNOWN)) {
        List<String> why = parts.stream().filter(p -> p.met == first).map(Judged::reason).toList();
        if (!why.isEmpty()) {
          return new Judged(first, String.join("; ", why));
        }
      }
      return new Judged(Answer.YES, String.join("; ", parts.stream().map(Judged::reason).toList()));
    }
  }
}
