package cistern.panel;

import cistern.finding.Problem;
import cistern.measurement.Analyte.Family;
import cistern.measurement.Sample;
import java.util.List;

/** A value that is more likely a slip than a disease: it stays, but carries no verdict. */
public sealed interface ValueUnderSuspicion extends Problem
    permits CompartmentsSwapped, ImplausibleValue, UnitSlipSuspected {

  /** The samples whose value is doubted. */
  List<Sample> suspected();

  /** Whether verdicts that use it are withheld; for light chains the trouble only warns. */
  default boolean isWithholding() {
    return suspected().stream().noneMatch(s -> s.analyte().family() == Family.LIGHT_CHAIN);
  }
}
