package cistern.puncture;

/**
 * Whether the result could change the verdict of one edition of the criteria.
 *
 * @param edition the year of the edition
 * @param effect what it could do
 */
public record ResultEffect(String edition, Effect effect) {

  /** What a result could do. */
  public enum Effect {
    DECISIVE("decisive", "the result decides it"),
    NARROWS("narrows", "the result narrows what is missing"),
    NO_EFFECT("no-effect", "the result changes nothing in it"),
    UNRESOLVED("unresolved", "what the result changes is not known here");

    private final String word;
    private final String text;

    Effect(String word, String text) {
      this.word = word;
      this.text = text;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }

    /** In a sentence. */
    public String text() {
      return text;
    }
  }
}
