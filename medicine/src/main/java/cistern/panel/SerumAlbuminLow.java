package cistern.panel;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.Set;

/**
 * Serum albumin under its range, which hides synthesis from the linear index.
 *
 * @param limit the lower end of the range, mg/L
 * @param place where the value stands
 * @param grounds what the range rests on
 */
public record SerumAlbuminLow(double limit, String place, Grounds grounds) implements PanelTrouble {

  private static final double MG_PER_G = 1000;

  static Optional<SerumAlbuminLow> check(Panel panel, Set<Sample> suspected, Facts facts) {
    return LowSerum.of(panel, Sample.serum(Analyte.ALBUMIN), suspected, facts)
        .map(low -> new SerumAlbuminLow(low.limit(), low.place(), low.grounds()));
  }

  @Override
  public String code() {
    return "serum-albumin-low";
  }

  @Override
  public String text() {
    return "Serum albumin is under %s g/L: the IgG index can be falsely normal. Lean on the bands and on the quotient limit."
        .formatted(Printed.significant(limit / MG_PER_G));
  }
}
