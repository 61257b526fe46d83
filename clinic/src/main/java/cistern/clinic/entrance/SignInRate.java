package cistern.clinic.entrance;

import cistern.clinic.setting.Setting;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;

/** How often an address has tried to come in within the current minute. */
final class SignInRate {

  private final Clock clock;
  private final Map<String, Integer> triesByAddress = new HashMap<>();
  private long minute;

  SignInRate(Clock clock) {
    this.clock = clock;
  }

  /** Counts a try, and says whether it may be looked at. */
  synchronized boolean isAllowed(String address) {
    long now = clock.millis() / Duration.ofMinutes(1).toMillis();
    if (now != minute) {
      triesByAddress.clear();
      minute = now;
    }
    return triesByAddress.merge(address, 1, Integer::sum) <= Setting.SIGN_INS_A_MINUTE.number();
  }
}
