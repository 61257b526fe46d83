package cistern.clinic.account;

/**
 * What came of something about an account.
 *
 * @param <T> what there is when it was done
 */
public sealed interface AccountOutcome<T> {

  /**
   * It was done.
   *
   * @param value what came of it
   */
  record Done<T>(T value) implements AccountOutcome<T> {}

  /**
   * It was not done.
   *
   * @param reason why
   */
  record NotDone<T>(Refused reason) implements AccountOutcome<T> {}

  /** It was done. */
  static <T> AccountOutcome<T> of(T value) {
    return new Done<>(value);
  }

  /** It was not done. */
  static <T> AccountOutcome<T> of(Refused reason) {
    return new NotDone<>(reason);
  }
}
