package cistern.puncture.headache;

import cistern.fact.Grounds;
import cistern.measurement.Answer;

/**
 * A published definition held against what is known.
 *
 * @param name the definition
 * @param met yes, no, or unknown for undetermined
 * @param reason why
 * @param grounds what it rests on
 */
public record Definition(String name, Answer met, String reason, Grounds grounds) {

  /** The verdict in words. */
  public String verdict() {
    return switch (met) {
      case YES -> "met";
      case NO -> "not-met";
      case UNKNOWN -> "undetermined";
    };
  }
}
