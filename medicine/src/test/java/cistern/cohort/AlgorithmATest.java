package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class AlgorithmATest {

  private static final double[] CREOSOTE = {
    24.140, 20.155, 19.500, 20.300, 20.705, 17.570, 20.100, 20.940, 21.185
  };
  private static final double[] COPPER = {
    2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77,
    3.4, 2.2, 3.5, 3.6, 3.7, 3.7
  };

  /** Source: ISO 5725-5:1998, example, at its fixed point; R MASS, chem. */
  @Test
  void of_publishedData_isThePublishedFixedPoint() {
    AlgorithmA creosote = AlgorithmA.of(CREOSOTE);
    AlgorithmA copper = AlgorithmA.of(COPPER);

    assertThat(creosote.mean()).isCloseTo(20.412143, within(1e-6));
    assertThat(creosote.standardDeviation()).isCloseTo(1.069840, within(1e-6));
    assertThat(copper.mean()).isCloseTo(3.205566, within(1e-6));
    assertThat(copper.standardDeviation()).isCloseTo(0.674150, within(1e-6));
    OutsideCheck.of(
            "Robust mean and spread, algorithm A: creosote, copper",
            "ISO 5725-5:1998; R MASS 7.3, chem",
            "absolute 1e-6")
        .toTable("2 of 2 agree");
  }

  @Test
  void of_scaledAndMoved_followsIt() {
    AlgorithmA plain = AlgorithmA.of(COPPER);
    AlgorithmA moved = AlgorithmA.of(Arrays.stream(COPPER).map(x -> 2 * x - 3).toArray());

    assertThat(moved.mean()).isCloseTo(2 * plain.mean() - 3, within(1e-9));
    assertThat(moved.standardDeviation()).isCloseTo(2 * plain.standardDeviation(), within(1e-9));
  }

  @Test
  void of_oneValueTowardsInfinity_staysBounded() {
    double[] wild = COPPER.clone();
    wild[16] = 1e12;

    assertThat(AlgorithmA.of(wild).mean()).isCloseTo(AlgorithmA.of(COPPER).mean(), within(1e-6));
  }
}
