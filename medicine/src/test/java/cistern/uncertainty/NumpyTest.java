package cistern.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.finding.FindingCode;
import cistern.finding.Uncertainty;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * Two panels against a simulation with numpy, 8·10⁶ draws: {@code src/test/python/
 * uncertainty_oracle.py} wrote the table and says where its formulas come from.
 */
class NumpyTest {

  /** Project rule: probability 0.003, ends 1 % of the interval's width. */
  private static final double PROBABILITY = 0.003;

  private static final double END = 0.01;

  private static Interpreted panel(String name) {
    Samples samples = name.equals("near") ? near() : high();
    return samples.interpreted();
  }

  private static Samples near() {
    return Samples.none()
        .withPair(Analyte.ALBUMIN, 220, 42_000)
        .withPair(Analyte.IGG, 41, 11_000)
        .withPair(Analyte.IGA, 5, 2_000)
        .withPair(Analyte.IGM, 1.1, 1_100)
        .withPair(Analyte.KAPPA, 0.25, 13)
        .withPair(Analyte.MEASLES_IGG, 5.1, 900)
        .withPair(Analyte.RUBELLA_IGG, 0.6, 110)
        .withPair(Analyte.VARICELLA_ZOSTER_IGG, 3.9, 800)
        .withPair(Analyte.GLUCOSE, 2.4, 5.6);
  }

  private static Samples high() {
    return Samples.none()
        .withPair(Analyte.ALBUMIN, 600, 40_000)
        .withPair(Analyte.IGG, 140, 10_500)
        .withPair(Analyte.IGA, 19, 1_900)
        .withPair(Analyte.IGM, 5.5, 1_000)
        .withPair(Analyte.KAPPA, 1.3, 22)
        .withPair(Analyte.MEASLES_IGG, 16, 900)
        .withPair(Analyte.RUBELLA_IGG, 2.1, 110)
        .withPair(Analyte.VARICELLA_ZOSTER_IGG, 15, 800)
        .withPair(Analyte.GLUCOSE, 3.4, 8.3);
  }

  private static List<String> lines() throws IOException {
    try (InputStream table =
        Objects.requireNonNull(NumpyTest.class.getResourceAsStream("numpy.tsv"))) {
      return new String(table.readAllBytes(), StandardCharsets.UTF_8).lines().skip(1).toList();
    }
  }

  @Test
  void measure_twoPanels_agreesWithNumpy() throws IOException {
    double worst = 0;
    for (String line : lines()) {
      List<String> row = List.of(line.split("\t", -1));
      Uncertainty of =
          panel(row.getFirst()).uncertainty(FindingCode.parse(row.get(1)).orElseThrow());
      double probability = Double.parseDouble(row.get(4));

      assertThat(of.probabilityAbove().orElseThrow())
          .as(line)
          .isCloseTo(probability, within(PROBABILITY));
      worst = Math.max(worst, Math.abs(of.probabilityAbove().orElseThrow() - probability));
      assertThat(of.interval95().isPresent()).as(line).isEqualTo(!row.get(2).equals("-"));
      of.interval95().ifPresent(interval -> checkEnds(line, row, interval));
    }
    OutsideCheck.of(
            "Probabilities and 95 % intervals of two panels",
            "simulation with numpy, 8,000,000 draws", "probability 0.003; ends 1 % of the width")
        .toTable(worst);
  }

  private static void checkEnds(String line, List<String> row, Interval interval) {
    double lower = Double.parseDouble(row.get(2));
    double upper = Double.parseDouble(row.get(3));

    assertThat(interval.lower()).as(line).isCloseTo(lower, within(END * (upper - lower)));
    assertThat(interval.upper()).as(line).isCloseTo(upper, within(END * (upper - lower)));
  }
}
