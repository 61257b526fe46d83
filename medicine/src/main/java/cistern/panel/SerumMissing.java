package cistern.panel;

import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.util.List;

/**
 * No serum value for an analyte that was measured in the other fluid.
 *
 * @param missing the sample that was not measured
 * @param place where its counterpart stands
 */
public record SerumMissing(Sample missing, String place) implements PanelTrouble {

  static List<SerumMissing> check(Panel panel) {
    return Counterpart.missingIn(Compartment.SERUM, panel).stream()
        .map(c -> new SerumMissing(c.missing(), c.place()))
        .toList();
  }

  @Override
  public String code() {
    return "serum-missing";
  }

  @Override
  public String text() {
    return "There is no serum value for the %s in CSF: no quotient can be formed. Measure it in serum drawn with the CSF."
        .formatted(missing.analyte().term());
  }
}
