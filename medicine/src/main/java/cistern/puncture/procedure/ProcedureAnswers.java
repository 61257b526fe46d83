package cistern.puncture.procedure;

import cistern.measurement.Answer;
import java.util.List;
import java.util.Map;

/**
 * What was answered; a question that was not asked is unknown, never no.
 *
 * @param byQuestion the answers given
 */
public record ProcedureAnswers(Map<Question, Answer> byQuestion) {

  /** Nothing asked. */
  public static final ProcedureAnswers NONE = new ProcedureAnswers(Map.of());

  /** Copies the answers. */
  public ProcedureAnswers {
    byQuestion = Map.copyOf(byQuestion);
  }

  /** The answer to a question. */
  public Answer answer(Question question) {
    return byQuestion.getOrDefault(question, Answer.UNKNOWN);
  }

  /** Whether the answer is yes. */
  public boolean isYes(Question question) {
    return answer(question).isYes();
  }

  /** Whether nobody has answered. */
  public boolean isOpen(Question question) {
    return !answer(question).isKnown();
  }

  /** The questions among some that were answered so. */
  public List<Question> with(Answer answer, List<Question> among) {
    return among.stream().filter(q -> answer(q) == answer).toList();
  }

  /** Yes when any is yes, no when all are no, else unknown. */
  public Answer any(List<Question> questions) {
    if (questions.stream().anyMatch(this::isYes)) {
      return Answer.YES;
    }
    return questions.stream().anyMatch(this::isOpen) ? Answer.UNKNOWN : Answer.NO;
  }
}
