package cistern.statement;

/**
 * A sentence of a catalogue.
 *
 * @param code the name in files
 * @param text the sentence
 */
public record Said(String code, String text) implements Statement {

  /** What is done about an urgent rule, and what is not known of one. */
  static final String ACT = "urgent-act";

  static final String UNKNOWN = "urgent-unknown";

  /** What a negative PCR for herpes leaves open. */
  static final String HERPES_PCR = "herpes-pcr";

  @Override
  public boolean isUrgent() {
    return code.equals(ACT) || code.equals(UNKNOWN) || code.equals(HERPES_PCR);
  }
}
