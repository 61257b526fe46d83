package cistern.report.plan;

import cistern.puncture.PuncturePlan;
import cistern.puncture.guideline.Precaution;
import java.util.ArrayList;
import java.util.List;

/** The order in which precautions are read: what is there, what is open, what was looked at. */
final class PlanOrder {

  private PlanOrder() {}

  static List<Precaution> precautions(PuncturePlan.Ready ready) {
    List<Precaution> all = new ArrayList<>();
    for (Precaution.State state : Precaution.State.values()) {
      all.addAll(ready.with(state));
    }
    return all;
  }
}
