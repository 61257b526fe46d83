package cistern.puncture.bleeding;

/** What a guideline says about the time between the last dose and the puncture. */
sealed interface Hold {

  /**
   * An interval.
   *
   * @param hours from the last dose
   */
  record Wait(Hours hours) implements Hold {}

  /**
   * More than some hours, without an upper end.
   *
   * @param hours left out
   */
  record MoreThan(double hours) implements Hold {}

  /** No interval is asked for. */
  record NoInterval() implements Hold {}

  /** It advises against lumbar puncture on this drug. */
  record Avoid() implements Hold {}

  /** No interval: a measured level decides. */
  record UntilLevel() implements Hold {}

  /** It speaks only of restarting. */
  record RestartOnly() implements Hold {}

  /** Its interval was not read, or is not confirmed: never a number. */
  record NotRead() implements Hold {}
}
