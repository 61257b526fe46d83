package cistern.gel.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class CountDistributionTest {
  @Nested
  class Published {
    @Test
    void of_fairCoins_isBinomial() {
      // Binomial(4, ½): 1 4 6 4 1 sixteenths, from the definition.
      CountDistribution four = CountDistribution.of(new double[] {0.5, 0.5, 0.5, 0.5});
      assertThat(four.chances()).containsExactly(0.0625, 0.25, 0.375, 0.25, 0.0625);
      assertThat(four.median()).isEqualTo(2);
      assertThat(four.atLeast(2)).isCloseTo(0.6875, within(1e-12));
    }
  }

  @Nested
  class Printed {
    /** Nine digits of R's PoissonBinomial, package of Debian. */
    @Test
    void of_sevenEvents_isPoissonBinomial() {
      double[] expected = {
        0.002251158,
        0.036912905,
        0.187015842,
        0.366852585,
        0.303643610,
        0.096127347,
        0.007089390,
        0.000107163
      };
      CountDistribution seven =
          CountDistribution.of(new double[] {0.02, 0.5, 0.9, 0.35, 0.6, 0.07, 0.81});
      for (int k = 0; k < expected.length; k++) {
        assertThat(seven.chances().get(k)).isCloseTo(expected[k], within(1e-9));
      }
    }
  }

  @Nested
  class Laws {
    @Test
    void of_anyEvents_sumIsOneAndMeanIsTheSumOfChances() {
      SplittableRandom random = new SplittableRandom(7);
      for (int run = 0; run < 200; run++) {
        double[] events = random.doubles(random.nextInt(0, 20)).toArray();
        CountDistribution d = CountDistribution.of(events);
        double sum = 0;
        double mean = 0;
        double expected = 0;
        for (int k = 0; k < d.chances().size(); k++) {
          sum += d.chances().get(k);
          mean += k * d.chances().get(k);
        }
        for (double e : events) {
          expected += e;
        }
        assertThat(sum).isCloseTo(1, within(1e-12));
        assertThat(mean).isCloseTo(expected, within(1e-10));
      }
    }
  }

  @Test
  void without_anEventThatWasPutIn_isTheDistributionBefore() {
    SplittableRandom random = new SplittableRandom(11);
    for (int run = 0; run < 200; run++) {
      CountDistribution before =
          CountDistribution.of(random.doubles(random.nextInt(0, 15)).toArray());
      double event = run % 10 == 0 ? Math.round(random.nextDouble()) : random.nextDouble();
      List<Double> after = before.with(event).without(event).chances();
      assertThat(after).hasSameSizeAs(before.chances());
      for (int k = 0; k < after.size(); k++) {
        assertThat(after.get(k)).isCloseTo(before.chances().get(k), within(1e-9));
      }
    }
  }

  /** No chance is below 0 and all are 1 together, whatever is taken out. */
  @Test
  void without_anEventThatWasNeverIn_isStillADistribution() {
    SplittableRandom random = new SplittableRandom(12);
    for (int run = 0; run < 200; run++) {
      CountDistribution any = CountDistribution.of(random.doubles(random.nextInt(0, 9)).toArray());
      CountDistribution left = any.without(random.nextDouble());
      assertThat(left.chances()).allMatch(p -> p >= 0 && p <= 1 + 1e-12);
      assertThat(left.atLeast(0)).isCloseTo(1, within(1e-12));
    }
    assertThat(CountDistribution.of(new double[0]).without(0.9).chances()).containsExactly(1.0);
  }

  /** By hand: three quarters of what was, a quarter of what is said. */
  @Test
  void drawnTo_smallCounts_isAQuarterOfTheWay() {
    CountDistribution two = CountDistribution.of(new double[] {1, 1});
    CountDistribution drawn = two.drawnTo(new double[] {0.25, 0.5, 0.25});
    assertThat(drawn.chances()).containsExactly(0.0625, 0.125, 0.8125);
    assertThat(drawn.median()).isEqualTo(2);
  }

  /** By hand: what is said of "three or more" falls on three when nothing else is known. */
  @Test
  void drawnTo_noBandSeen_putsManyOnTheFirstOfThem() {
    CountDistribution none = CountDistribution.of(new double[0]);
    CountDistribution drawn = none.drawnTo(new double[] {0.5, 0, 0, 0.5});
    assertThat(drawn.chances()).containsExactly(0.875, 0.0, 0.0, 0.125);
  }

  @Test
  void median_lostWeight_isTheLast() {
    assertThat(new CountDistribution(List.of(0.1, 0.1)).median()).isEqualTo(1);
  }
}
