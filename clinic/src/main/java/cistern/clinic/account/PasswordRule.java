package cistern.clinic.account;

import cistern.clinic.setting.Setting;

/** How long a password is, as people read it: the only place of these words. */
public final class PasswordRule {

  /** The least length in words. */
  public static final String WORDS = Setting.PASSWORD_LEAST.number() + " characters or more";

  /** The greatest length, in bytes. */
  static final int MOST = Setting.PASSWORD_MOST.number();

  private PasswordRule() {}
}
