package cistern.exchange.workup;

import cistern.finding.Problem;

/**
 * A pattern or a result of the bands that has no part in what is used.
 *
 * @param place where it stands
 * @param reason what is used instead
 */
record BandStatementNotUsed(String place, Reason reason) implements Problem {

  /** What is used instead. */
  enum Reason {
    /** Counts or a pattern that say otherwise. */
    COUNTS(
        "This does not agree with the counts or the pattern given beside it, which are used: ask"
            + " the laboratory which is right."),
    /** The picture of a gel. */
    PICTURE(
        "This is not used, because the picture of the gel is read: to correct what is read, give"
            + " the counts.");

    private final String sentence;

    Reason(String sentence) {
      this.sentence = sentence;
    }
  }

  @Override
  public String code() {
    return "band-statement-not-used";
  }

  @Override
  public String text() {
    return reason.sentence;
  }
}
