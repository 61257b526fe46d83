package cistern.gel.lanes;

import java.util.Optional;

/** What was put on a lane. */
public enum LaneKind {
  CSF("csf"),
  SERUM("serum"),
  CONTROL("control"),
  BLANK("blank"),
  /** Nobody said. */
  UNKNOWN("unknown");

  private final String word;

  LaneKind(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The kind that a person may name by a word. */
  public static Optional<LaneKind> parse(String word) {
    for (LaneKind kind : values()) {
      if (kind != UNKNOWN && kind.word.equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
