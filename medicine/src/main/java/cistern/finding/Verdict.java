package cistern.finding;

/** How a value stands to its limit. */
public enum Verdict {
  WITHIN("within"),
  ABOVE("above"),
  BELOW("below"),
  BORDERLINE("borderline"),
  UNDETERMINED("undetermined");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** The word used in files and on pages. */
  public String word() {
    return word;
  }

  /** Whether a verdict was given. */
  public boolean isDecided() {
    return this != UNDETERMINED;
  }
}
