package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AgeLineTest {

  /** An independent answer: the best of all lines through two people. */
  private static double leastSum(double[] ages, double[] values, double p) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ages.length; i++) {
      for (int j = 0; j < i; j++) {
        if (ages[i] != ages[j]) {
          double slope = (values[i] - values[j]) / (ages[i] - ages[j]);
          least = Math.min(least, sum(ages, values, p, values[i] - slope * ages[i], slope));
        }
      }
    }
    return least;
  }

  private static double sum(double[] ages, double[] values, double p, double at0, double slope) {
    double sum = 0;
    for (int i = 0; i < ages.length; i++) {
      double left = values[i] - at0 - slope * ages[i];
      sum += left * (left < 0 ? p - 1 : p);
    }
    return sum;
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5, 8, 20, 60, 121})
  void of_randomPeople_isTheBestOfAllLinesThroughTwo(int people) {
    Random random = new Random(people);
    for (int trial = 0; trial < 25; trial++) {
      double[] ages = random.doubles(people, 18, 80).map(Math::rint).toArray();
      if (Arrays.stream(ages).distinct().count() < 2) {
        continue;
      }
      double[] values =
          Arrays.stream(ages).map(a -> 4 + a / 15 + Math.abs(random.nextGaussian())).toArray();
      for (double p : new double[] {0.5, 0.8, 0.975}) {
        AgeLine line = AgeLine.of(ages, values, p);
        double least = leastSum(ages, values, p);

        assertThat(sum(ages, values, p, line.intercept(), line.perYear()))
            .isCloseTo(least, within(1e-9 * (1 + least)));
      }
    }
  }

  @Test
  void of_peopleOnALine_isThatLine() {
    double[] ages = {20, 30, 40, 50, 60};
    double[] values = Arrays.stream(ages).map(a -> 4 + a / 15).toArray();
    AgeLine line = AgeLine.of(ages, values, 0.95);

    assertThat(line.at(45)).isCloseTo(7, within(1e-9));
    assertThat(line.perYear()).isCloseTo(1 / 15.0, within(1e-9));
  }

  @Test
  void of_manyPeople_leavesTheShareUnderTheLine() {
    Random random = new Random(1);
    double[] ages = random.doubles(5_000, 18, 80).toArray();
    double[] values =
        Arrays.stream(ages)
            .map(a -> (4 + a / 15) * Math.exp(0.2 * random.nextGaussian()))
            .toArray();
    AgeLine line = AgeLine.of(ages, values, 0.975);
    int under = 0;
    for (int i = 0; i < ages.length; i++) {
      under += values[i] <= line.at(ages[i]) + 1e-12 ? 1 : 0;
    }
    // at most two people lie on the line
    assertThat(under).isBetween(4_873, 4_878);
  }

  @Test
  void of_oneAgeOnly_isRefused() {
    assertThatThrownBy(() -> AgeLine.of(new double[] {30, 30}, new double[] {1, 2}, 0.5))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> AgeLine.of(new double[] {30}, new double[] {1}, 0.5))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
