package cistern.report.wording;

import cistern.finding.Printed;
import cistern.panel.CheckedPanel;
import cistern.panel.Draw;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/** When CSF and serum were drawn, in words; a time names its offset from universal time. */
public final class WhenDrawn {

  private static final int MINUTES = 60;
  private static final int HOURS_TOLD = 48;
  private static final int HOURS = 24;

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.UK);

  private WhenDrawn() {}

  /** The day of a time, {@code 9 May 2034}. */
  public static String day(OffsetDateTime time) {
    return DAY.format(time);
  }

  /** A draw: {@code CSF drawn 9 May 2034, 10:10 UTC}. */
  public static String of(String fluid, Draw draw) {
    Optional<OffsetDateTime> at = draw.at();
    return at.map(t -> fluid + " drawn " + time(t)).orElse(fluid + " draw time not given");
  }

  /** A time with its offset: {@code 9 May 2034, 10:10 UTC+02:00}. */
  public static String time(OffsetDateTime time) {
    String offset = time.getOffset().getTotalSeconds() == 0 ? "" : time.getOffset().getId();
    return TIME.format(time) + " UTC" + offset;
  }

  /** How the serum stands to the fluid: {@code serum 15 min later, pair valid}. */
  public static String serum(CheckedPanel panel) {
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
