package cistern.puncture.headache;

import cistern.fact.Grounds;
import cistern.measurement.Answer;
import cistern.puncture.procedure.WarningSign;
import java.util.List;

/**
 * The red-flag questions that stand for one danger, with their answers.
 *
 * @param danger what they may stand for
 * @param thinkOf what to think of
 * @param urgency how soon
 * @param asked each question with its answer; an unanswered one is open
 * @param grounds what it rests on
 */
public record RedFlagAnswer(
    WarningSign.Danger danger, String thinkOf, String urgency, List<Asked> asked, Grounds grounds) {

  /** Copies the questions. */
  public RedFlagAnswer {
    asked = List.copyOf(asked);
  }

  /**
   * One question.
   *
   * @param flag what is asked
   * @param answer yes, no or unknown
   */
  public record Asked(WarningSign flag, Answer answer) {}

  /** Whether any question was answered with yes. */
  public boolean isPresent() {
    return asked.stream().anyMatch(a -> a.answer().isYes());
  }

  /** The questions with an answer. */
  public List<WarningSign> with(Answer answer) {
    return asked.stream().filter(a -> a.answer() == answer).map(Asked::flag).toList();
  }
}
