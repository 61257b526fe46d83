package cistern.panel;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.Set;

/**
 * Serum albumin under its range, which hides synthesis from the linear index.
 *
 * @param limit the lower end of the range, with its unit
 * @param place where the value stands
 * @param grounds what the range rests on
 */
public record SerumAlbuminLow(String limit, String place, Grounds grounds) implements PanelTrouble {

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
    return "Serum albumin is under %s: the IgG index can be falsely normal. Lean on the bands and on the quotient limit."
        .formatted(limit);
  }
}
