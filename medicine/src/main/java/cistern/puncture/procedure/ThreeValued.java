package cistern.puncture.procedure;

import cistern.measurement.Answer;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;

/** Conditions of answers that may be unknown. */
public final class ThreeValued {

  private ThreeValued() {}

  /** Yes when any is yes, no when all are no, else unknown. */
  public static Answer any(Answer... answers) {
    List<Answer> all = List.of(answers);
    if (all.contains(Answer.YES)) {
      return Answer.YES;
    }
    return all.contains(Answer.UNKNOWN) ? Answer.UNKNOWN : Answer.NO;
  }

  /** No when any is no, yes when all are yes, else unknown. */
  public static Answer all(Answer... answers) {
    List<Answer> all = List.of(answers);
    if (all.contains(Answer.NO)) {
      return Answer.NO;
    }
    return all.contains(Answer.UNKNOWN) ? Answer.UNKNOWN : Answer.YES;
  }

  /** The other answer; unknown stays unknown. */
  public static Answer not(Answer answer) {
    return switch (answer) {
      case YES -> Answer.NO;
      case NO -> Answer.YES;
      case UNKNOWN -> Answer.UNKNOWN;
    };
  }

  /** Yes or no. */
  public static Answer when(boolean is) {
    return is ? Answer.YES : Answer.NO;
  }

  /** What a value says, unknown when there is none. */
  public static Answer when(OptionalDouble value, DoublePredicate is) {
    return value.isPresent() ? when(is.test(value.getAsDouble())) : Answer.UNKNOWN;
  }
}
