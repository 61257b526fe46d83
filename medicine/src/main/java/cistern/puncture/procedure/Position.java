package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.Optional;

/** How the person lies or sits. */
public enum Position {
  LATERAL("lateral", "lying on the side"),
  SUPINE("supine", "lying on the back"),
  PRONE("prone", "lying face down"),
  SITTING("sitting", "sitting"),
  UNKNOWN("unknown", "position not recorded");

  private final String code;
  private final String term;

  Position(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The name in files and in the keys of facts. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** The one of a name, if there is one. */
  public static Optional<Position> parse(String code) {
    return Arrays.stream(values()).filter(v -> v.code.equals(code)).findFirst();
  }
}
