package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TailsTest {

  /** The same by sorting, with linear interpolation (type 7 of Hyndman and Fan 1996). */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 10, 40, 41, 509})
  void of_anyNumber_equalsSorting(int n) {
    Random random = new Random(n);
    double[] values = random.doubles(n).map(v -> v - 0.5).toArray();
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    Tails tails = Tails.of(values);

    assertThat(tails.lower()).isCloseTo(quantile(sorted, 0.025), within(1e-12));
    assertThat(tails.upper()).isCloseTo(quantile(sorted, 0.975), within(1e-12));
  }

  private static double quantile(double[] sorted, double p) {
    double at = p * (sorted.length - 1);
    int below = (int) at;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }

  @Test
  void around_aValueOutside_isHeld() {
    assertThat(new Tails(1, 2).around(3)).isEqualTo(new Proportion.Ends(1, 3));
    assertThat(new Tails(1, 2).around(0)).isEqualTo(new Proportion.Ends(0, 2));
  }
}
