package cistern.panel;

import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.util.List;

/**
 * No CSF value for an analyte that was measured in the other fluid.
 *
 * @param missing the sample that was not measured
 * @param place where its counterpart stands
 */
public record CsfMissing(Sample missing, String place) implements PanelTrouble {

  static List<CsfMissing> check(Panel panel) {
    return Counterpart.missingIn(Compartment.CSF, panel).stream()
        .map(c -> new CsfMissing(c.missing(), c.place()))
        .toList();
  }

  @Override
  public String code() {
    return "csf-missing";
  }

  @Override
  public String text() {
    return "There is no CSF value for the %s in serum: no quotient can be formed. Measure it in the same CSF, if any is left."
        .formatted(missing.analyte().term());
  }
}
