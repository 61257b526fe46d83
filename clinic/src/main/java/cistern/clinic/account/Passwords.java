package cistern.clinic.account;

import cistern.clinic.setting.Setting;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.springframework.security.crypto.bcrypt.BCryptPasswordEncoder;

/** Passwords, hashed with bcrypt (Provos and Mazières, USENIX 1999). */
final class Passwords {

  private static final BCryptPasswordEncoder BCRYPT =
      new BCryptPasswordEncoder(Setting.PASSWORD_ROUNDS.number());

  /** The hash of nobody's password, so that an unknown name takes as long as a known one. */
  private static final String NOBODY = hash("nobody has this password");

  private Passwords() {}

  /** Why a password may not be used, if it may not. */
  static Optional<Refused> check(String password) {
    if (password.codePointCount(0, password.length()) < Setting.PASSWORD_LEAST.number()) {
      return Optional.of(Refused.SHORT);
    }
    return password.getBytes(StandardCharsets.UTF_8).length > Setting.PASSWORD_MOST.number()
        ? Optional.of(Refused.LONG)
        : Optional.empty();
  }

  static String hash(String password) {
    return String.valueOf(BCRYPT.encode(password));
  }

  static boolean isRight(String password, Optional<String> hash) {
    boolean isCheckable =
        password.getBytes(StandardCharsets.UTF_8).length <= Setting.PASSWORD_MOST.number();
    boolean isSame = isCheckable && BCRYPT.matches(password, hash.orElse(NOBODY));
    return isSame && hash.isPresent();
  }
}
