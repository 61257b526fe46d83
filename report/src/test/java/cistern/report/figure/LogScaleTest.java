package cistern.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class LogScaleTest {

  private final LogScale scale = new LogScale(1, 200, 46, 268);

  @Test
  void ticks_always_areOneTwoFiveOfEachDecade() {
    assertThat(scale.ticks()).containsExactly(1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0);
  }

  @Test
  void ticks_endThatIsNotRepresentable_isStillATick() {
    assertThat(new LogScale(0.3e-3, 200e-3, 0, 1).ticks())
        .hasSize(9)
        .last()
        .satisfies(t -> assertThat(t).isCloseTo(0.2, within(1e-12)));
  }

  @Test
  void at_ends_areStartAndEnd() {
    assertThat(scale.at(1)).isEqualTo(46);
    assertThat(scale.at(200)).isEqualTo(268);
  }

  @Test
  void at_outside_standsAtTheNearerEnd() {
    assertThat(scale.at(0)).isEqualTo(46);
    assertThat(scale.at(-3)).isEqualTo(46);
    assertThat(scale.at(Double.POSITIVE_INFINITY)).isEqualTo(268);
    assertThat(scale.isUnder(0.99)).isTrue();
    assertThat(scale.isOver(200.01)).isTrue();
    assertThat(scale.isOn(200)).isTrue();
  }

  @Test
  void of_scaleThatDoesNotRise_isRefused() {
    assertThatThrownBy(() -> new LogScale(0, 1, 0, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new LogScale(2, 2, 0, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new LinearScale(1, 1, 0, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Nested
  class Laws {

    @Test
    void at_equalRatios_areEquallyLong() {
      SplittableRandom random = new SplittableRandom(7);
      for (int i = 0; i < 1_000; i++) {
        double low = random.nextDouble(1, 10);
        double ratio = random.nextDouble(1, 20);
        double length = scale.at(low * ratio) - scale.at(low);
        assertThat(length).isCloseTo(scale.length(Math.log(ratio)), within(1e-9));
      }
    }

    @Test
    void value_ofAShare_standsThere() {
      for (double share = 0; share <= 1; share += 0.01) {
        assertThat(scale.at(scale.value(share))).isCloseTo(46 + share * 222, within(1e-9));
      }
    }

    @Test
    void linear_equalDifferences_areEquallyLong() {
      LinearScale linear = new LinearScale(0, 1, 100, 200);
      assertThat(linear.at(0.25)).isEqualTo(125);
      assertThat(linear.at(2)).isEqualTo(200);
      assertThat(linear.at(-1)).isEqualTo(100);
    }
  }
}
