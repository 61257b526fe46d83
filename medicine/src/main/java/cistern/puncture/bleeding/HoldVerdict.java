package cistern.puncture.bleeding;

/** What one guideline answers to the hours since the last dose. */
public enum HoldVerdict {
  /** Its interval and its conditions are fulfilled. */
  PASSED("passed"),
  /** Its interval or a condition is not fulfilled. */
  NOT_PASSED("not-passed"),
  /** It cannot be answered from what is known: ask the prescriber. */
  ASK("ask");

  private final String word;

  HoldVerdict(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
