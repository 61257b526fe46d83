package cistern.criteria;

import java.util.Arrays;
import java.util.Optional;

/** How the disease has shown itself. */
public enum Presentation {
  /** A typical attack. */
  ATTACK("attack"),
  /** Typical progression from onset. */
  PROGRESSION("progression"),
  /** No symptom: radiologically isolated. */
  NONE("none"),
  /** Symptoms that are not specific. */
  NON_SPECIFIC("non-specific"),
  /** A presentation that speaks against the disease. */
  ATYPICAL("atypical"),
  /** Not stated. */
  UNKNOWN("unknown");

  private final String code;

  Presentation(String code) {
    this.code = code;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The presentation of a name in a file, if it is one. */
  public static Optional<Presentation> parse(String code) {
    return Arrays.stream(values()).filter(p -> p.code.equals(code)).findFirst();
  }
}
