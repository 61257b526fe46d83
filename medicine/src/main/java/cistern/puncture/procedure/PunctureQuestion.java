package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.Optional;

/** What a puncture is for. */
public enum PunctureQuestion {
  MS("ms", "suspected multiple sclerosis"),
  INFECTION("infection", "suspected infection"),
  MALIGNANCY("malignancy", "suspected malignancy"),
  RESEARCH("research", "suspected multiple sclerosis, with samples for research");

  private final String code;
  private final String term;

  PunctureQuestion(String code, String term) {
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
  public static Optional<PunctureQuestion> parse(String code) {
    return Arrays.stream(values()).filter(v -> v.code.equals(code)).findFirst();
  }
}
