package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.barrier.BarrierFindings;
import cistern.barrier.BloodCorrection;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.fluid.FluidFindings;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Panel;
import cistern.panel.Person;
import cistern.uncertainty.Uncertainties;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PanelNumbersTest {

  private static final Facts FACTS = Facts.standard();
  private static final PanelNumbers.Kernel KERNEL = PanelNumbers.Kernel.of(FACTS);

  /** Concentrations without a meaning, one in nine missing. */
  private static Map<Sample, double[]> concentrations(int rows) {
    Random random = new Random(23);
    Map<Sample, double[]> columns = new HashMap<>();
    for (Sample sample : QuotientColumns.of(FACTS).needed()) {
      double centre = sample.in() == Compartment.CSF ? 50 : 8_000;
      double[] column = new double[rows];
      Arrays.setAll(
          column,
          i -> random.nextInt(9) == 0 ? Double.NaN : centre * Math.exp(random.nextGaussian() / 2));
      columns.put(sample, column);
    }
    return columns;
  }

  @Test
  void compute_manyRows_givesTheChancesOfEveryPanelToTheLastBit() {
    int rows = 200;
    Map<Sample, double[]> concentrations = concentrations(rows);
    PanelNumbers numbers = KERNEL.compute(concentrations, true);
    Uncertainties uncertainties = Uncertainties.of(FACTS);
    int compared = 0;
    for (int row = 0; row < rows; row++) {
      CheckedPanel panel = panel(concentrations, row);
      Map<FindingCode, Double> single = uncertainties.probabilities(panel, findings(panel));
      for (FindingCode code : numbers.chances().keySet()) {
        double chance = numbers.chances().getOrDefault(code, new double[0])[row];
        assertThat(chance)
            .as(code.code() + " of row " + row)
            .isEqualTo(single.getOrDefault(code, Double.NaN));
        compared += Double.isNaN(chance) ? 0 : 1;
      }
    }
    assertThat(numbers.chances()).hasSize(6);
    assertThat(compared).isGreaterThan(2 * rows);
    assertThat(KERNEL.compute(concentrations, false).chances()).isEmpty();
  }

  private static Findings findings(CheckedPanel panel) {
    FluidFindings fluid = FluidFindings.of(FACTS);
    List<Finding> all = new ArrayList<>(BarrierFindings.of(FACTS).interpret(panel));
    all.addAll(fluid.interpret(panel));
    all.addAll(
        BloodCorrection.of(FACTS, fluid.leukocyteLimits(panel), fluid.proteinLimits(panel))
            .interpret(panel));
    return Findings.of(all);
  }

  @Test
  void summary_inParts_isThatOfTheWhole() {
    Map<Sample, double[]> concentrations = concentrations(300);
    NumberSummary whole = NumberSummary.of(KERNEL.compute(concentrations, true));
    NumberSummary parts = NumberSummary.NONE;
    for (int from : new int[] {130, 0, 270}) {
      int to = from == 0 ? 130 : from == 130 ? 270 : 300;
      Map<Sample, double[]> part = new HashMap<>();
      concentrations.forEach((s, column) -> part.put(s, Arrays.copyOfRange(column, from, to)));
      parts = NumberSummary.of(KERNEL.compute(part, true)).merge(parts);
    }

    assertThat(parts.rows()).isEqualTo(300);
    assertThat(parts.over()).isEqualTo(whole.over());
    for (FindingCode code : whole.values().keySet()) {
      Distribution one = whole.values().getOrDefault(code, Distribution.NONE);
      Distribution other = parts.values().getOrDefault(code, Distribution.NONE);
      assertThat(other.spectrum()).isEqualTo(one.spectrum());
      assertThat(other.moments().count()).isEqualTo(one.moments().count());
      assertThat(other.moments().mean())
          .isCloseTo(one.moments().mean(), within(1e-12 * Math.abs(one.moments().mean())));
      assertThat(other.moments().standardDeviation())
          .isCloseTo(
              one.moments().standardDeviation(), within(1e-12 * one.moments().standardDeviation()));
    }
  }

  @Test
  void distribution_ofAColumn_isThatOfItsValues() {
    double[] column = {3, Double.NaN, 0, 0.5, 3};
    Distribution one = Distribution.NONE;
    for (double value : new double[] {3, 0, 0.5, 3}) {
      one = one.merge(Distribution.of(value));
    }

    assertThat(Distribution.of(column)).isEqualTo(one);
  }

  private static CheckedPanel panel(Map<Sample, double[]> concentrations, int row) {
    List<Measurement> results = new ArrayList<>();
    concentrations.forEach(
        (sample, column) -> {
          if (!Double.isNaN(column[row])) {
            results.add(Measurement.of(sample, Interval.of(column[row])));
          }
        });
    return CheckedPanel.check(Panel.of(Person.aged(40), results), FACTS);
  }
}
