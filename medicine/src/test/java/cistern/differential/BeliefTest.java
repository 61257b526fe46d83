package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import java.util.Arrays;
import org.hipparchus.distribution.continuous.BetaDistribution;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BeliefTest {

  @Nested
  class Published {

    /** Derived from Jarius 2017 with this prior: 24.9 (16.5–40.3) and 0.38 (0.34–0.41). */
    @Test
    void quantiles_mrz_likelihoodRatiosAsPrinted() {
      int n = 400;
      double[] ms = new Belief(458.5, 266.5).quantiles(n);
      double[] controls = new Belief(19.5, 735.5).quantiles(n);
      double[] positive = new double[n * n];
      double[] negative = new double[n * n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          positive[i * n + j] = ms[i] / controls[j];
          negative[i * n + j] = (1 - ms[i]) / (1 - controls[j]);
        }
      }
      Arrays.sort(positive);
      Arrays.sort(negative);

      assertThat(at(positive, 0.5)).isCloseTo(24.9, within(0.15));
      assertThat(at(positive, 0.025)).isCloseTo(16.5, within(0.1));
      assertThat(at(positive, 0.975)).isCloseTo(40.3, within(0.3));
      assertThat(at(negative, 0.025)).isCloseTo(0.34, within(0.005));
      assertThat(at(negative, 0.975)).isCloseTo(0.41, within(0.005));
      OutsideCheck.of(
              "Likelihood ratio of the MRZ reaction by beta posteriors",
              "derived from Jarius 2017, PMID 28005176, by an independent program",
              "as printed")
          .toTable("24.9 (16.5–40.3) agrees");
    }

    private double at(double[] sorted, double p) {
      return sorted[(int) (p * (sorted.length - 1))];
    }
  }

  @Nested
  class Laws {

    @ParameterizedTest
    @CsvSource({"0.5,0.5", "0.5,100.5", "50,3", "1.6,4.9", "92,8", "0.42,20.6", "5,5"})
    void quantiles_anyShape_equalAnotherInversion(double a, double b) {
      int n = 101;
      double[] quantiles = new Belief(a, b).quantiles(n);
      BetaDistribution reference = new BetaDistribution(a, b);
      for (int k = 0; k < n; k++) {
        double p = reference.cumulativeProbability(quantiles[k]);
        assertThat(p).isCloseTo((k + 0.5) / n, within(5e-4));
      }
    }

    @Test
    void withAtMost_heavier_sameMeanLessWeight() {
      Belief heavy = Belief.of(0.03, 100);
      Belief light = heavy.withAtMost(20);

      assertThat(light.mean()).isCloseTo(heavy.mean(), within(1e-12));
      assertThat(light.a() + light.b()).isCloseTo(21, within(1e-12));
      assertThat(light.withAtMost(50)).isEqualTo(light);
    }
  }
}
