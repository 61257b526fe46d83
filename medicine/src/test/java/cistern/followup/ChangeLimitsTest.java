package cistern.followup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.Grounds;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChangeLimitsTest {

  private static final double Z = 1.96;

  private static ChangeLimits limits(double analytical, double biological) {
    double variance = ChangeLimits.logVariance(Math.log1p(analytical * analytical), biological);
    return ChangeLimits.of(Z, List.of(variance, variance));
  }

  @Nested
  class Published {

    /** Log-normal reference change values, z = 1.96 (Fokkema 2006; arithmetic checked apart). */
    @ParameterizedTest
    @CsvSource({"0.03, 0.05, 17.52591, -14.91238", "0.10, 0.25, 108.19915, -51.96906"})
    void of_publishedImprecision_givesTheVectors(
        double analytical, double biological, double up, double down) {
      ChangeLimits limits = limits(analytical, biological);

      assertThat(limits.up() * 100).isEqualTo(up, within(5e-6));
      assertThat(limits.down() * 100).isEqualTo(down, within(5e-6));
      OutsideCheck.of(
              "Reference change value at CVa " + analytical + ", CVi " + biological,
              "Fraser and Harris; Fokkema 2006",
              "5e-6 per cent")
          .toTable("agrees");
    }

    /** Adding two logarithms instead gives +108.83421 %: the wrong form must not pass. */
    @Test
    void of_largeImprecision_isNotTheSumOfTwoLogarithms() {
      assertThat(limits(0.10, 0.25).up() * 100).isLessThan(108.5);
    }

    /** Product of four 5 % factors: CV .1001876367 (the project's checks 3.5). */
    @Test
    void logVariance_ofFourFactors_isExactAndNotFirstOrder() {
      double variance = ChangeLimits.logVariance(4 * Math.log1p(0.05 * 0.05), 0);

      assertThat(Math.sqrt(Math.expm1(variance))).isEqualTo(0.1001876367, within(5e-11));
    }

    /** Denmark 2026: 29/227, 13 % (9–18); Mermelstein 2022: 4/48 (3–20), 2/48 (1–14). */
    @ParameterizedTest
    @CsvSource({
      "29, 227, '29 of 227 (13 %, 9–18)'",
      "4, 48, '4 of 48 (8 %, 3–20)'",
      "2, 48, '2 of 48 (4 %, 1–14)'"
    })
    void persistence_ofAPublishedSeries_hasThePrintedInterval(
        double count, double total, String printed) {
      assertThat(Persistence.of(count, total, Z, Grounds.MEASURED).toText()).isEqualTo(printed);
    }
  }

  @Nested
  class Laws {

    @Test
    void of_anyImprecision_hasReciprocalEnds() {
      for (double cv = 0; cv < 0.6; cv += 0.03) {
        ChangeLimits limits = limits(cv, cv / 2);
        assertThat((1 + limits.up()) * (1 + limits.down())).isEqualTo(1, within(1e-12));
      }
    }

    @Test
    void isPassedBy_theLimitItself_isStillVariation() {
      ChangeLimits limits = limits(0.03, 0.05);

      assertThat(limits.isPassedBy(limits.up())).isFalse();
      assertThat(limits.isPassedBy(limits.down())).isFalse();
      assertThat(limits.isPassedBy(Math.nextUp(limits.up()))).isTrue();
      assertThat(limits.isPassedBy(Math.nextDown(limits.down()))).isTrue();
    }
  }
}
