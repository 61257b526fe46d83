package cistern.exchange.json;

import java.io.Serializable;

/**
 * One reason why an input is not valid.
 *
 * @param trouble what kind of reason
 * @param place a JSON path, a line and column, or empty for the whole input
 * @param text a sentence for a doctor, without any value of a patient
 */
public record InputProblem(InputTrouble trouble, String place, String text)
    implements Serializable {

  /** A problem at a place; the arguments are words of ours, units or names of fields. */
  public static InputProblem of(InputTrouble trouble, String place, Object... arguments) {
    return new InputProblem(trouble, place, trouble.toText(arguments));
  }

  /** The name of the reason for programs. */
  public String key() {
    return trouble.key();
  }

  /** Place and sentence in one line. */
  public String toText() {
    return place.isEmpty() ? text : place + ": " + text;
  }
}
