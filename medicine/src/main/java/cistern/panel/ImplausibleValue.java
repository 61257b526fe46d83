package cistern.panel;

import cistern.fact.Grounds;
import cistern.measurement.Sample;
import java.util.List;

/**
 * A value, or a quotient of two, outside what is seen in people, and no single slip explains it.
 *
 * @param suspected the value, or both values when only their quotient is implausible
 * @param place where the first of them stands
 * @param grounds what the plausible ranges rest on
 */
public record ImplausibleValue(List<Sample> suspected, String place, Grounds grounds)
    implements PanelTrouble, ValueUnderSuspicion {

  /** Copies the samples. */
  public ImplausibleValue {
    suspected = List.copyOf(suspected);
  }

  @Override
  public String code() {
    return "implausible-value";
  }

  @Override
  public String text() {
    String what =
        suspected.size() == 1
            ? "The value of " + suspected.getFirst().term() + " is"
            : "The quotient of CSF to serum " + suspected.getFirst().analyte().term() + " is";
    return what
        + " outside the plausible range, and no slip of the unit explains it. It stays as it is;"
        + " check it with the laboratory.";
  }
}
