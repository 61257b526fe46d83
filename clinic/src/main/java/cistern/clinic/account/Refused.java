package cistern.clinic.account;

/** Why something about an account was not done. */
public enum Refused {
  WRONG(
      "This name and password do not belong together. After several wrong tries the account is"
          + " locked for a while."),
  LOCKED(
      "This account is locked for some minutes after several wrong passwords. Wait, or ask an"
          + " administrator for a one-time code."),
  CODE("This code is not valid: it was used already, is too old, or was mistyped."),
  SHORT("This password is too short: twelve characters or more, a sentence is best."),
  LONG("This password is too long: 72 bytes are the most."),
  NAME("A name for signing in is 2 to 40 small letters, digits, points or hyphens."),
  NAME_TAKEN("This name for signing in is taken."),
  FULL_NAME("Give the name of the person as it should stand under a report."),
  ITSELF("You cannot close your own account.");

  private final String text;

  Refused(String text) {
    this.text = text;
  }

  /** The sentence for the person. */
  public String text() {
    return text;
  }
}
