package cistern.criteria;

/** What it costs a person to learn something, least first. */
public enum Burden {
  /** Ask, examine or look it up. */
  RECORD("record"),
  /** Read existing images again. */
  SAME_IMAGES("same-images"),
  /** Another test on a sample that is there. */
  SAME_SAMPLE("same-sample"),
  /** A tube of blood. */
  BLOOD("blood-draw"),
  /** A new test without a needle. */
  NEW_TEST("new-test"),
  /** A lumbar puncture. */
  PUNCTURE("puncture"),
  /** Waiting. */
  TIME("time");

  private final String word;

  Burden(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
