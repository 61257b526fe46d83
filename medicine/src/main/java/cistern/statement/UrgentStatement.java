package cistern.statement;

import cistern.urgent.Tier;
import cistern.urgent.Urgency;

/**
 * An urgent rule that holds.
 *
 * @param urgency the rule
 */
public record UrgentStatement(Urgency urgency) implements Statement {

  @Override
  public String code() {
    return urgency.code();
  }

  @Override
  public boolean isUrgent() {
    return urgency.isOpen() || urgency.tier() != Tier.T2;
  }

  @Override
  public String text() {
    return urgency.words().say() + urgency.answered().map(FirstOfAll::answered).orElse("");
  }
}
