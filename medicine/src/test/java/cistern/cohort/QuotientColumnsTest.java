package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import cistern.barrier.BarrierFindings;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class QuotientColumnsTest {

  private static final Facts FACTS = Facts.standard();
  private static final QuotientColumns COLUMNS = QuotientColumns.of(FACTS);

  /** Concentrations without a meaning, positive, CSF about a hundredth of serum. */
  private static Map<Sample, double[]> concentrations(int rows) {
    Random random = new Random(17);
    Map<Sample, double[]> columns = new HashMap<>();
    for (Sample sample : COLUMNS.needed()) {
      double centre = sample.in() == Compartment.CSF ? 50 : 8_000;
      double[] column = new double[rows];
      Arrays.setAll(column, i -> centre * Math.exp(random.nextGaussian() / 2));
      columns.put(sample, column);
    }
    return columns;
  }

  @Test
  void interpret_manyRows_isEveryPanelToTheLastBit() {
    int rows = 2_500;
    Map<Sample, double[]> concentrations = concentrations(rows);
    QuotientColumns.Computed computed = COLUMNS.interpret(concentrations);
    BarrierFindings barrier = BarrierFindings.of(FACTS);

    assertThat(computed.rows()).isEqualTo(rows);
    // albumin quotient and rate; quotient, fraction, amount and index of four proteins
    assertThat(computed.codes()).hasSize(2 + 4 * 4);
    int compared = 0;
    for (int row = 0; row < rows; row += 7) {
      for (Finding finding : barrier.interpret(panel(concentrations, row))) {
        if (finding.number().isPresent() && finding.code() != FindingCode.MRZ_REACTION) {
          assertThat(computed.value(finding.code())[row])
              .as(finding.code().code())
              .isEqualTo(finding.number().getAsDouble());
          compared++;
        }
      }
    }
    assertThat(compared).isGreaterThan(18 * rows / 7);
  }

  @Test
  void limit_ofAQuotient_isThatOfThePanel() {
    Map<Sample, double[]> concentrations = concentrations(40);
    QuotientColumns.Computed computed = COLUMNS.interpret(concentrations);
    Finding quotient =
        BarrierFindings.of(FACTS).interpret(panel(concentrations, 3)).stream()
            .filter(f -> f.code() == FindingCode.IGM_QUOTIENT)
            .findFirst()
            .orElseThrow();

    assertThat(computed.limit(FindingCode.IGM_QUOTIENT)[3])
        .isEqualTo(quotient.limits().above().orElseThrow().at());
  }

  @Test
  void interpret_missingColumn_isRefused() {
    Map<Sample, double[]> concentrations = concentrations(3);
    concentrations.remove(COLUMNS.needed().getLast());

    assertThatThrownBy(() -> COLUMNS.interpret(concentrations))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("kappa-flc.serum");
  }

  @Test
  void value_ofAnotherCode_isRefused() {
    assertThatThrownBy(() -> COLUMNS.columns(1).value(FindingCode.LACTATE))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static CheckedPanel panel(Map<Sample, double[]> concentrations, int row) {
    List<Measurement> results = new ArrayList<>();
    concentrations.forEach(
        (sample, column) -> results.add(Measurement.of(sample, Interval.of(column[row]))));
    return CheckedPanel.check(Panel.of(Person.aged(40), results), FACTS);
  }
}
