package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.cohort.ReferenceLimits.Estimate;
import cistern.fact.Facts;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReferenceLimitsTest {

  private static final ReferenceLimits LIMITS = ReferenceLimits.of(Facts.standard());

  private static double[] upTo(int n) {
    return IntStream.rangeClosed(1, n).asDoubleStream().toArray();
  }

  @Nested
  class Published {

    /** Source: the binomial distribution; the printed table of CLSI EP28-A3c agrees. */
    @ParameterizedTest
    @CsvSource({"120, 1, 7", "125, 1, 7", "150, 1, 8", "200, 2, 10", "240, 2, 11", "500, 7, 19"})
    void of_soManyPeople_hasTheTablesRanks(int people, int low, int high) {
      // with the values 1 … n the value is its rank
      Estimate.ByRank limits = (Estimate.ByRank) LIMITS.of(upTo(people));

      assertThat(limits.lowerBetween()).isEqualTo(new ConfidenceInterval(low, high));
      assertThat(limits.upperBetween())
          .isEqualTo(new ConfidenceInterval(people + 1 - high, people + 1 - low));
      assertThat(limits.lower()).isCloseTo(0.025 * (people + 1), within(1e-9));
      assertThat(limits.upper()).isCloseTo(0.975 * (people + 1), within(1e-9));
      OutsideCheck.of(
              "Confidence ranks of reference limits, " + people + " people",
              "CLSI EP28-A3c, table of ranks; binomial distribution",
              "exact")
          .toTable("agrees");
    }

    /** Source: Hyndman and Fan 1996, type 6; R 4.2.2, quantile(1:10, type = 6). */
    @Test
    void typeSix_oneToTen_isThatOfR() {
      double[] sorted = upTo(10);

      assertThat(Quantiles.typeSix(sorted, 0.025)).isEqualTo(1);
      assertThat(Quantiles.typeSix(sorted, 0.1)).isCloseTo(1.1, within(1e-12));
      assertThat(Quantiles.typeSix(sorted, 0.25)).isCloseTo(2.75, within(1e-12));
      assertThat(Quantiles.typeSix(sorted, 0.5)).isCloseTo(5.5, within(1e-12));
      assertThat(Quantiles.typeSix(sorted, 0.75)).isCloseTo(8.25, within(1e-12));
      assertThat(Quantiles.typeSix(sorted, 0.975)).isEqualTo(10);
    }
  }

  @Nested
  class Laws {

    @ParameterizedTest
    @CsvSource({"0", "1", "19"})
    void of_tooFewPeople_givesNoLimit(int people) {
      assertThat(LIMITS.of(upTo(people))).isEqualTo(new Estimate.TooFew(people, 20));
    }

    @Test
    void of_fewPeopleMostlyAlike_givesNoLimit() {
      double[] alike = new double[60];
      alike[0] = 7;

      assertThat(LIMITS.of(alike)).isEqualTo(new Estimate.TooFew(60, 120));
    }

    @Test
    void byRank_underARisingTransform_followsIt() {
      double[] values = drawn(240, 3);
      Estimate.ByRank plain = (Estimate.ByRank) LIMITS.of(values);
      Estimate.ByRank cubed =
          (Estimate.ByRank) LIMITS.of(Arrays.stream(values).map(Math::exp).toArray());

      assertThat(cubed.lowerBetween().lower()).isEqualTo(Math.exp(plain.lowerBetween().lower()));
      assertThat(cubed.upperBetween().upper()).isEqualTo(Math.exp(plain.upperBetween().upper()));
    }

    @Test
    void robust_scaledAndMoved_followsIt() {
      double[] values = drawn(60, 4);
      Estimate.Robust plain = (Estimate.Robust) LIMITS.of(values);
      Estimate.Robust moved =
          (Estimate.Robust) LIMITS.of(Arrays.stream(values).map(x -> 3 * x + 5).toArray());

      assertThat(moved.lower()).isCloseTo(3 * plain.lower() + 5, within(1e-9));
      assertThat(moved.upper()).isCloseTo(3 * plain.upper() + 5, within(1e-9));
    }

    @Test
    void robust_ofNormalPeople_liesNearTheTrueLimits() {
      // the true limits of a standard normal distribution are ±1.96
      Moments lower = Moments.NONE;
      for (int seed = 0; seed < 200; seed++) {
        lower = lower.with(((Estimate.Robust) LIMITS.of(drawn(100, seed))).lower());
      }
      assertThat(lower.mean()).isCloseTo(-1.96, within(0.06));
    }

    @Test
    void robust_oneWildValue_hardlyMoves() {
      double[] values = drawn(60, 6);
      Estimate.Robust plain = (Estimate.Robust) LIMITS.of(values);
      values[0] = 1e6;
      Estimate.Robust wild = (Estimate.Robust) LIMITS.of(values);

      assertThat(wild.upper()).isCloseTo(plain.upper(), within(0.5));
    }

    private double[] drawn(int n, long seed) {
      Random random = new Random(seed);
      return random.doubles(n).map(x -> random.nextGaussian()).toArray();
    }
  }
}
