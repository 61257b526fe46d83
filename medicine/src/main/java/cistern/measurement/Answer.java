package cistern.measurement;

import java.util.Optional;

/** An answer to a clinical question; unknown is never turned into no. */
public enum Answer {
  YES("yes"),
  NO("no"),
  UNKNOWN("unknown");

  private final String word;

  Answer(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** Whether it is yes or no. */
  public boolean isKnown() {
    return this != UNKNOWN;
  }

  /** Whether it is yes. */
  public boolean isYes() {
    return this == YES;
  }

  /** The answer of a word, if it is one. */
  public static Optional<Answer> parse(String word) {
    for (Answer answer : values()) {
      if (answer.word.equals(word)) {
        return Optional.of(answer);
      }
    }
    return Optional.empty();
  }
}
