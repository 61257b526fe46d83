package cistern.panel;

import cistern.measurement.Answer;
import java.util.Optional;

/** Plasma exchange: serum IgG falls, and index and fraction rise without any new synthesis. */
public record PlasmaExchange() implements PanelTrouble {

  static Optional<PlasmaExchange> check(Panel panel) {
    return panel.answer(Circumstance.PLASMA_EXCHANGE) == Answer.YES
        ? Optional.of(new PlasmaExchange())
        : Optional.empty();
  }

  @Override
  public String code() {
    return "plasma-exchange";
  }

  @Override
  public String place() {
    return "context.plasmaExchange";
  }

  @Override
  public String text() {
    return "After plasma exchange the serum IgG is low, and index and intrathecal fraction rise"
        + " without more synthesis. Lean on the bands; date the exchange.";
  }
}
