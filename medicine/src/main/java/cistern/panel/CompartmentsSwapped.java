package cistern.panel;

import cistern.fact.Grounds;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.List;

/**
 * The CSF value looks like serum and the serum value like CSF.
 *
 * @param analyte whose values look exchanged
 * @param place where the CSF value stands
 * @param grounds what the plausible ranges rest on
 */
public record CompartmentsSwapped(Analyte analyte, String place, Grounds grounds)
    implements PanelTrouble, ValueUnderSuspicion {

  @Override
  public List<Sample> suspected() {
    return List.of(Sample.csf(analyte), Sample.serum(analyte));
  }

  @Override
  public String code() {
    return "compartments-swapped";
  }

  @Override
  public String text() {
    return isWithholding()
        ? "The CSF and serum values of the %s look exchanged: the other way round both would be plausible. They stay as they are; check them against the laboratory's report."
            .formatted(analyte.term())
        : "More %s in CSF than in serum: possible with strong local synthesis, but check that the two values were not exchanged."
            .formatted(analyte.term());
  }
}
