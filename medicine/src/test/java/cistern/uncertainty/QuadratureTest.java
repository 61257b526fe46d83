package cistern.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.barrier.Hyperbola;
import org.hipparchus.distribution.continuous.LogNormalDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The numerical parts against closed forms and another library. */
class QuadratureTest {

  @Nested
  class Normal {

    private static final NormalDistribution REFERENCE = new NormalDistribution();

    @Test
    void below_everywhere_agreesWithTheDistributionFunction() {
      for (double z = -9; z < 9; z += 0.0137) {
        assertThat(StandardNormal.below(z))
            .isCloseTo(REFERENCE.cumulativeProbability(z), within(1e-10));
      }
    }

    @Test
    void below_beyondItsReach_isCertain() {
      assertThat(StandardNormal.below(Double.NEGATIVE_INFINITY)).isZero();
      assertThat(StandardNormal.below(Double.POSITIVE_INFINITY)).isOne();
    }

    @Test
    void quantile_ofCertainty_staysWithinReach() {
      assertThat(StandardNormal.quantile(0)).isEqualTo(-StandardNormal.REACH);
      assertThat(StandardNormal.quantile(1)).isEqualTo(StandardNormal.REACH);
      // standard table: 1.959964
      assertThat(StandardNormal.quantile(0.975)).isCloseTo(1.959963984540054, within(1e-12));
    }

    @Test
    void above_withoutSpread_isAStep() {
      assertThat(StandardNormal.above(1e-9, 0)).isOne();
      assertThat(StandardNormal.above(0, 0)).isZero();
    }
  }

  @Nested
  class Expectation {

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.3, 0.5})
    void expectation_ofAnExponential_isClosed(double sigma) {
      // E exp(σz) = exp(σ²/2)
      assertThat(NormalRule.line(sigma).expectation(z -> Math.exp(sigma * z)))
          .isCloseTo(Math.exp(sigma * sigma / 2), within(1e-12));
      assertThat(NormalRule.plane(sigma).expectation(z -> Math.exp(sigma * z)))
          .isCloseTo(Math.exp(sigma * sigma / 2), within(1e-10));
    }

    @Test
    void expectation_ofNoSpread_isTheCentre() {
      assertThat(NormalRule.line(0).expectation(z -> 3 + z)).isEqualTo(3);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-2.345, 0, 0.123, 4.5})
    void expectation_ofAJump_isExactWhereItIsNamed(double at) {
      NormalRule rule = NormalRule.split(NormalRule.Bends.none().with(at, 0));

      assertThat(rule.expectation(z -> z > at ? 1 : 0))
          .isCloseTo(StandardNormal.below(-at), within(2e-7));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.1, 1, 3})
    void expectation_ofAStep_isClosed(double width) {
      // E Φ((z − c)/w) = Φ(−c/√(1 + w²))
      NormalRule rule = NormalRule.split(NormalRule.Bends.none().with(0.7, width));

      assertThat(rule.expectation(z -> StandardNormal.below((z - 0.7) / width)))
          .isCloseTo(StandardNormal.below(-0.7 / Math.hypot(1, width)), within(1e-5));
    }
  }

  @Nested
  class Quantiles {

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.5, 2})
    void of_aSkewedDistribution_isFound(double sigma) {
      LogNormalDistribution reference = new LogNormalDistribution(1, sigma);
      for (double p : new double[] {0.025, 0.5, 0.975}) {
        double found =
            Quantile.of(x -> 1 - reference.cumulativeProbability(x), p, Math.E, Math.E * sigma);

        assertThat(found)
            .isCloseTo(reference.inverseCumulativeProbability(p), within(1e-5 * found));
      }
    }

    @Test
    void of_aPoorGuess_isFound() {
      NormalDistribution reference = new NormalDistribution(500, 3);

      assertThat(Quantile.of(x -> 1 - reference.cumulativeProbability(x), 0.025, 0, 1e-3))
          .isCloseTo(reference.inverseCumulativeProbability(0.025), within(1e-4));
    }

    @Test
    void of_aJump_endsAtTheJump() {
      assertThat(Quantile.of(x -> x < 2 ? 1 : 0, 0.5, 0, 1)).isCloseTo(2, within(1e-9));
    }
  }

  @Nested
  class Curves {

    private static final Curve.Limit IGG = new Curve.Limit(new Hyperbola(0.93, 6e-6, 1.7e-3));

    @Test
    void inverse_onTheCurve_isTheQuantity() {
      for (double x = 1e-3; x < 0.1; x *= 1.3) {
        assertThat(IGG.inverse(IGG.at(x))).isCloseTo(x, within(1e-12));
        assertThat(IGG.slopeAt(x))
            .isCloseTo((IGG.at(x + 1e-7) - IGG.at(x - 1e-7)) / 2e-7, within(1e-5));
      }
    }

    @Test
    void inverse_underTheCurve_isZero() {
      // Qlim(0) = 0.578·10⁻³ for IgG (formulas.md, section 5)
      assertThat(IGG.inverse(0.5e-3)).isZero();
      assertThat(IGG.inverse(-1)).isZero();
      assertThat(new Curve.Line(1, 2).inverse(0.5)).isZero();
    }

    @Test
    void plasma_ofAHaematocrit_isTheRest() {
      Curve.Plasma plasma = new Curve.Plasma();

      assertThat(plasma.at(0.45)).isCloseTo(0.55, within(1e-15));
      assertThat(plasma.at(1.2)).isZero();
      assertThat(plasma.inverse(0.55)).isCloseTo(0.45, within(1e-15));
      assertThat(plasma.isRising()).isFalse();
      assertThat(plasma.slopeAt(0.45)).isEqualTo(-1);
    }
  }

  @Nested
  class Excesses {

    private static final LogNormal NARROW = LogNormal.of(1, 0.001);
    private static final LogNormal WIDE = LogNormal.of(1, 0.2);

    /** The same excess, whichever variable matters most and is therefore taken in closed form. */
    @Test
    void chanceOver_whicheverVariableDominates_isClosed() {
      Curve.Line line = new Curve.Line(0, 1);
      // CSF dominates: P(C > 1.1 + 1); serum: P(S < 2.1 − 1.1) ; share: the same
      LogNormal two = LogNormal.of(2.1, 0.2);
      assertThat(new Excess(two, NARROW, NARROW, line, false).chanceOver(1.1))
          .isCloseTo(0.5, within(1e-3));
      LogNormal exact = LogNormal.of(2.1, 0);
      assertThat(new Excess(exact, WIDE, NARROW, line, false).chanceOver(1.1))
          .isCloseTo(0.5, within(1e-3));
      assertThat(new Excess(exact, NARROW, WIDE, line, false).chanceOver(1.1))
          .isCloseTo(0.5, within(1e-3));
    }

    @Test
    void chanceOver_withFallingShare_isClosed() {
      // P(1 − (1 − X) > 0.5) = P(X > 0.5) = 1/2
      Excess excess =
          new Excess(
              LogNormal.ONE, LogNormal.ONE, LogNormal.of(0.5, 0.1), new Curve.Plasma(), false);

      assertThat(excess.chanceOver(0.5)).isCloseTo(0.5, within(1e-9));
      assertThat(excess.chanceOver(2)).isZero();
    }

    @Test
    void quantile_withoutSpread_isTheValue() {
      Excess excess =
          new Excess(LogNormal.ONE, LogNormal.of(0.25, 0), LogNormal.ONE, Curve.Line.WHOLE, true);

      assertThat(excess.quantile(0.025)).isEqualTo(0.75);
      assertThat(excess.chanceOver(-1)).isOne();
    }
  }
}
