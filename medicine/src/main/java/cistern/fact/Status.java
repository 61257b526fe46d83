package cistern.fact;

import java.util.Arrays;
import java.util.Optional;

/** How well a value is supported, strongest first. */
public enum Status {
  /** Seen in the cited publication. */
  READ("read"),
  /** Computed from other values. */
  DERIVED("derived"),
  /** Seen in a text that summarises the publication. */
  SECOND_HAND("second-hand"),
  /** Set by local policy. */
  LOCAL("local"),
  /** A habit of the trade without a source. */
  COMMON_PRACTICE("common-practice"),
  /** A choice of this project. */
  PROJECT_RULE("project-rule"),
  /** Recalled and not yet confirmed against the source. */
  MEMORY("memory");

  private final String word;

  Status(String word) {
    this.word = word;
  }

  /** The word used in files and on pages. */
  public String word() {
    return word;
  }

  /** The weaker of two statuses. */
  public Status weaker(Status other) {
    return compareTo(other) >= 0 ? this : other;
  }

  /** The status of a word, if it is one. */
  public static Optional<Status> parse(String word) {
    return Arrays.stream(values()).filter(s -> s.word.equals(word)).findFirst();
  }
}
