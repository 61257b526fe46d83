package cistern.panel;

import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.List;

/**
 * A value that only means something beside the other fluid, given in one fluid only.
 *
 * @param missing the sample that was not measured
 * @param place where the lonely value stands
 */
record Counterpart(Sample missing, String place) {

  /** The samples of one fluid that were not measured though their counterparts were. */
  static List<Counterpart> missingIn(Compartment fluid, Panel panel) {
    return panel.results().values().stream()
        .filter(m -> m.sample().analyte().isPaired())
        .filter(m -> m.sample().in() == fluid.counterpart())
        .map(m -> of(m, fluid))
        .filter(c -> !panel.has(c.missing))
        .toList();
  }

  private static Counterpart of(Measurement lonely, Compartment fluid) {
    return new Counterpart(new Sample(lonely.sample().analyte(), fluid), lonely.place());
  }
}
