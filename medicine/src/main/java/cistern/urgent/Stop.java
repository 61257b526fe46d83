package cistern.urgent;

import cistern.fact.Grounds;

/**
 * What stands between the numbers and a verdict. No stop gives a verdict by itself.
 *
 * @param code the name in files
 * @param effect what it does to the verdict
 * @param text the sentence
 * @param grounds status and sources of its row
 */
public record Stop(String code, Effect effect, String text, Grounds grounds) {

  /** What a stop does. */
  public enum Effect {
    /** Both editions wait until somebody says that no other explanation is better. */
    CONTRADICTION("contradiction"),
    /** Bands or the κ index are unknown to the criteria and to the answer. */
    INPUT_UNKNOWN("input-unknown"),
    /** The 2024 edition alone cannot be decided here. */
    EDITION_UNRESOLVED("edition-unresolved"),
    /** Only said. */
    SENTENCE("sentence");

    private final String word;

    Effect(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }
}
