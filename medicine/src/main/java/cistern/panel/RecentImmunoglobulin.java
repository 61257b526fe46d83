package cistern.panel;

import cistern.measurement.Answer;
import java.util.Optional;

/** Infused immunoglobulin: serum IgG is high, and quotient and index fall. */
public record RecentImmunoglobulin() implements PanelTrouble {

  static Optional<RecentImmunoglobulin> check(Panel panel) {
    return panel.answer(Circumstance.IMMUNOGLOBULIN_INFUSION) == Answer.YES
        ? Optional.of(new RecentImmunoglobulin())
        : Optional.empty();
  }

  @Override
  public String code() {
    return "recent-immunoglobulin";
  }

  @Override
  public String place() {
    return "context.immunoglobulinInfusion";
  }

  @Override
  public String text() {
    return "Immunoglobulin was infused: serum IgG is raised by it, so IgG quotient, index and"
        + " fraction can be falsely low, and infused antibody can show as bands in both fluids.";
  }
}
