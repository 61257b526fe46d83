package cistern.panel;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.Set;

/**
 * Serum IgG under its range, which feigns synthesis in the linear index.
 *
 * @param limit the lower end of the range, with its unit
 * @param place where the value stands
 * @param grounds what the range rests on
 */
public record SerumIggLow(String limit, String place, Grounds grounds) implements PanelTrouble {

  static Optional<SerumIggLow> check(Panel panel, Set<Sample> suspected, Facts facts) {
    return LowSerum.of(panel, Sample.serum(Analyte.IGG), suspected, facts)
        .map(low -> new SerumIggLow(low.limit(), low.place(), low.grounds()));
  }

  @Override
  public String code() {
    return "serum-igg-low";
  }

  @Override
  public String text() {
    return "Serum IgG is under %s: the IgG index can be falsely high. Lean on the bands and on the quotient limit."
        .formatted(limit);
  }
}
