package cistern.gel.bands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SavitzkyGolayTest {
  @Nested
  class Published {
    /** Savitzky, Golay, Anal Chem 1964;36:1627, tables I, II, IV and V. */
    @ParameterizedTest
    @CsvSource({
      "2, 2, 0, 35, -3 12 17 12 -3",
      "3, 2, 0, 21, -2 3 6 7 6 3 -2",
      "4, 2, 0, 231, -21 14 39 54 59 54 39 14 -21",
      "5, 2, 0, 429, -36 9 44 69 84 89 84 69 44 9 -36",
      "6, 2, 0, 143, -11 0 9 16 21 24 25 24 21 16 9 0 -11",
      "7, 2, 0, 1105, -78 -13 42 87 122 147 162 167 162 147 122 87 42 -13 -78",
      "3, 4, 0, 231, 5 -30 75 131 75 -30 5",
      "4, 4, 0, 429, 15 -55 30 135 179 135 30 -55 15",
      "2, 2, 1, 10, -2 -1 0 1 2",
      "2, 2, 2, 7, 2 -1 -2 -1 2"
    })
    void weights_ofATable_areItsIntegersOverItsNorm(
        int reach, int degree, int derivative, double norm, String integers) {
      double[] expected =
          Arrays.stream(integers.split(" ", -1))
              .mapToDouble(w -> Integer.parseInt(w) / norm)
              .toArray();
      double[] weights = SavitzkyGolay.weights(reach, degree, derivative);
      assertThat(weights).containsExactly(expected, within(1e-10));
    }

    /** The numbers of SciPy. */
    @Test
    void weights_ofElevenValues_agreeWithSciPy() throws IOException {
      double deviation = 0;
      for (int derivative = 0; derivative <= 2; derivative++) {
        double[] weights = SavitzkyGolay.weights(5, 3, derivative);
        double[] expected = SciPyNumbers.read("savgol" + derivative);
        assertThat(expected).hasSameSizeAs(weights);
        for (int i = 0; i < weights.length; i++) {
          deviation = Math.max(deviation, Math.abs(weights[i] - expected[i]));
        }
      }
      assertThat(deviation).isLessThan(1e-10);
      OutsideCheck.of(
              "Savitzky-Golay weights of eleven values, cubic, value to second derivative",
              "scipy.signal.savgol_coeffs, SciPy 1.17.1",
              "absolute 1e-10")
          .toTable(deviation);
    }
  }

  @Nested
  class Laws {
    @Test
    void weights_onAPolynomialOfTheDegree_giveItsValueAndDerivatives() {
      double[] y = new double[9];
      for (int i = 0; i < y.length; i++) {
        double t = i - 4;
        y[i] = 3 - 2 * t + 0.5 * t * t + 0.1 * t * t * t;
      }
      assertThat(along(y, 0)).isCloseTo(3, within(1e-9));
      assertThat(along(y, 1)).isCloseTo(-2, within(1e-9));
      assertThat(along(y, 2)).isCloseTo(1, within(1e-9));
    }

    private static double along(double[] y, int derivative) {
      double[] weights = SavitzkyGolay.weights(4, 3, derivative);
      double sum = 0;
      for (int i = 0; i < y.length; i++) {
        sum += weights[i] * y[i];
      }
      return sum;
    }
  }
}
