package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DiscriminationTest {

  private static double[] drawn(int n, double mean, long seed) {
    Random random = new Random(seed);
    // rounded, so that there are ties
    return random.doubles(n).map(x -> Math.rint(4 * (mean + random.nextGaussian())) / 4).toArray();
  }

  private static double over(double x, double y) {
    if (x == y) {
      return 0.5;
    }
    return x > y ? 1 : 0;
  }

  /** The definition: the share of pairs in which the person with the diagnosis lies higher. */
  @Test
  void area_withTies_isTheShareOfPairs() {
    double[] with = drawn(41, 0.7, 1);
    double[] without = drawn(72, 0, 2);
    double pairs = 0;
    for (double x : with) {
      for (double y : without) {
        pairs += over(x, y);
      }
    }
    assertThat(Discrimination.of(with, without).area()).isCloseTo(pairs / (41 * 72), within(1e-12));
  }

  @Test
  void area_signsChanged_isOneLess() {
    double[] with = drawn(30, 0.5, 3);
    double[] without = drawn(30, 0, 4);
    Discrimination plain = Discrimination.of(with, without);
    Discrimination turned = Discrimination.of(negated(with), negated(without));

    assertThat(turned.area()).isCloseTo(1 - plain.area(), within(1e-12));
    assertThat(turned.variance()).isCloseTo(plain.variance(), within(1e-12));
    assertThat(Discrimination.of(cubed(with), cubed(without)).area()).isEqualTo(plain.area());
  }

  private static double[] negated(double[] values) {
    return Arrays.stream(values).map(x -> -x).toArray();
  }

  private static double[] cubed(double[] values) {
    return Arrays.stream(values).map(x -> x * x * x).toArray();
  }

  /** The interval holds the true area, Φ(0.7/√2) = 0.6897, in about 95 of 100 samples. */
  @Test
  void interval_manySamples_holdsTheTrueArea() {
    int held = 0;
    for (int sample = 0; sample < 400; sample++) {
      Random random = new Random(sample);
      double[] with = random.doubles(60).map(x -> 0.7 + random.nextGaussian()).toArray();
      double[] without = random.doubles(60).map(x -> random.nextGaussian()).toArray();
      held += Discrimination.of(with, without).interval(0.95).holds(0.6897) ? 1 : 0;
    }
    assertThat(held).isBetween(366, 394);
  }

  @Test
  void of_onePerson_isRefused() {
    assertThatThrownBy(() -> Discrimination.of(new double[] {1}, new double[] {1, 2}))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void cutOff_clearGroups_liesBetweenThem() {
    CutOff cutOff = CutOff.of(new double[] {7, 8, 9, 10, 11}, new double[] {1, 2, 3, 4, 5}, 1);

    assertThat(cutOff.value()).isEqualTo(6);
    assertThat(cutOff.sensitivity()).isEqualTo(1);
    assertThat(cutOff.specificity()).isEqualTo(1);
    assertThat(cutOff.between().holds(6)).isTrue();
  }

  @Test
  void cutOff_sameSeed_isTheSame() {
    double[] with = drawn(40, 1, 11);
    double[] without = drawn(50, 0, 12);

    assertThat(CutOff.of(with, without, 5)).isEqualTo(CutOff.of(with, without, 5));
    assertThat(CutOff.of(with, without, 5).between().lower())
        .isLessThan(CutOff.of(with, without, 5).between().upper());
  }
}
