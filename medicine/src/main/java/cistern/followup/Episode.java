package cistern.followup;

import cistern.bands.BandReading;
import cistern.finding.Findings;
import cistern.panel.CheckedPanel;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * One puncture of a series.
 *
 * @param workup its id
 * @param panel the results with everything that is wrong with them
 * @param findings every derived quantity
 * @param bands what follows from the gel
 */
public record Episode(String workup, CheckedPanel panel, Findings findings, BandReading bands) {

  /** When the fluid was taken, if recorded. */
  public Optional<OffsetDateTime> at() {
    return panel.panel().csf().at();
  }

  /** Whose it is, if recorded. */
  public Optional<String> person() {
    return panel.panel().person().id();
  }
}
