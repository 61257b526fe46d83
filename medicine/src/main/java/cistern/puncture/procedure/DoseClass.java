package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.Optional;

/** Prophylactic or therapeutic, as the guidelines tell doses apart. */
public enum DoseClass {
  LOW("low"),
  HIGH("high"),
  UNKNOWN("unknown");

  private final String code;

  DoseClass(String code) {
    this.code = code;
  }

  /** The name in files and in the keys of facts. */
  public String code() {
    return code;
  }

  /** The class of a name, if it is one. */
  public static Optional<DoseClass> parse(String code) {
    return Arrays.stream(values()).filter(c -> c.code.equals(code)).findFirst();
  }
}
