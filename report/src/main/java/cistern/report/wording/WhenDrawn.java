package cistern.report.wording;

import cistern.finding.Printed;
import cistern.measurement.Compartment;
import cistern.panel.CheckedPanel;
import cistern.panel.Draw;

/**
 * When CSF and serum were drawn, in words.
 *
 * @param times how times are printed
 */
public record WhenDrawn(PrintedTime times) {

  private static final int MINUTES = 60;
  private static final int HOURS_TOLD = 48;
  private static final int HOURS = 24;

  /** A draw: {@code CSF drawn 9 May 2034, 10:10 UTC}. */
  public String of(String fluid, Draw draw) {
    return draw.at()
        .map(t -> fluid + " drawn " + times.at(t))
        .orElse(fluid + " draw time not given");
  }

  /** How the serum stands to the fluid: {@code serum 15 min later, pair valid}. */
  public String serum(CheckedPanel panel) {
    boolean isMeasured =
        panel.panel().serum().at().isPresent()
            || panel.panel().results().keySet().stream().anyMatch(s -> s.in() == Compartment.SERUM);
    if (!isMeasured) {
      return "no serum measured";
    }
    if (panel.pairing().hoursApart().isEmpty()) {
      return of("serum", panel.panel().serum());
    }
    double hours = panel.pairing().hoursApart().getAsDouble();
    String pair = "pair " + panel.pairing().verdict().word();
    if (hours == 0) {
      return "serum at the same time, " + pair;
    }
    return "serum %s %s, %s".formatted(apart(hours), hours < 0 ? "earlier" : "later", pair);
  }

  private static String apart(double hours) {
    double size = Math.abs(hours);
    if (size < 1) {
      return Printed.decimals(size * MINUTES, 0) + " min";
    }
    return size < HOURS_TOLD
        ? Printed.decimals(size, 1) + " h"
        : Printed.decimals(size / HOURS, 1) + " days";
  }
}
