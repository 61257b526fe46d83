package cistern.panel;

import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.List;

/**
 * A value that only means something beside the other fluid, given in one fluid only.
 *
 * @param missing the sample that was not measured
 * @param place where its counterpart stands
 */
public record CounterpartMissing(Sample missing, String place) implements PanelTrouble {

  static List<CounterpartMissing> check(Panel panel) {
    return panel.results().values().stream()
        .filter(m -> m.sample().analyte().isPaired())
        .filter(m -> m.sample().in() != Compartment.BLOOD)
        .filter(m -> !panel.has(counterpart(m.sample())))
        .map(CounterpartMissing::of)
        .toList();
  }

  private static CounterpartMissing of(Measurement lonely) {
    return new CounterpartMissing(counterpart(lonely.sample()), lonely.place());
  }

  private static Sample counterpart(Sample sample) {
    return new Sample(sample.analyte(), sample.in().counterpart());
  }

  @Override
  public String code() {
    return switch (missing.in()) {
      case CSF -> "csf-missing";
      case SERUM, BLOOD -> "serum-missing";
    };
  }

  @Override
  public String text() {
    String other = missing.in().counterpart().term();
    return missing.in() == Compartment.SERUM
        ? "There is no serum value for the %s in %s: no quotient can be formed. Measure it in serum drawn with the CSF."
            .formatted(missing.analyte().term(), other)
        : "There is no CSF value for the %s in %s: no quotient can be formed. Measure it in the same CSF, if any is left."
            .formatted(missing.analyte().term(), other);
  }
}
