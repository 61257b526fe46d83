package cistern.clinic.account;

/** Why something about an account was not done. */
public enum Refused {
  WRONG(
      "This name and password do not belong together, or the account is locked for some minutes"
          + " after several wrong tries. Wait, or ask an administrator for a one-time code."),
  BEFORE("The password until now is another one. Nothing was changed."),
  CODE("This code is not valid: it was used already, is too old, or was mistyped."),
  SHORT("This password is too short: " + PasswordRule.WORDS + ", a sentence is best."),
  LONG("This password is too long: " + PasswordRule.MOST + " bytes are the most."),
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
