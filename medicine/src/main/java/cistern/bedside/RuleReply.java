package cistern.bedside;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * How a person answered an urgent rule.
 *
 * @param to the code of the rule
 * @param by who, blank when not said
 * @param at when
 * @param reason why the rule needs no more action here, blank when not said
 */
public record RuleReply(String to, String by, Optional<OffsetDateTime> at, String reason) {

  /** Whether a named person gave a reason and a time; only then the rule is answered. */
  public boolean isComplete() {
    return !by.isBlank() && at.isPresent() && !reason.isBlank();
  }
}
