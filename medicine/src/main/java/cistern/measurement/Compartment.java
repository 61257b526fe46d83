package cistern.measurement;

import java.util.Optional;

/** The fluid a result was measured in. */
public enum Compartment {
  CSF("csf", "CSF"),
  SERUM("serum", "serum"),
  BLOOD("blood", "blood");

  private final String code;
  private final String term;

  Compartment(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** The other fluid of a pair. */
  public Compartment counterpart() {
    return this == CSF ? SERUM : CSF;
  }

  /** The compartment of a name in a file, if it is one. */
  public static Optional<Compartment> parse(String code) {
    for (Compartment compartment : values()) {
      if (compartment.code.equals(code)) {
        return Optional.of(compartment);
      }
    }
    return Optional.empty();
  }
}
