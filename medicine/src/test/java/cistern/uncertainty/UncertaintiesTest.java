package cistern.uncertainty;

import static cistern.finding.FindingCode.ALBUMIN_QUOTIENT;
import static cistern.finding.FindingCode.IGG_FRACTION;
import static cistern.finding.FindingCode.IGG_INDEX;
import static cistern.finding.FindingCode.IGG_LOCAL;
import static cistern.finding.FindingCode.IGG_QUOTIENT;
import static cistern.finding.FindingCode.IGG_SYNTHESIS_RATE;
import static cistern.finding.FindingCode.TOTAL_PROTEIN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.finding.FindingCode;
import cistern.finding.Uncertainty;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class UncertaintiesTest {

  private static final Sample CSF_IGG = Sample.csf(Analyte.IGG);
  private static final Sample SERUM_IGG = Sample.serum(Analyte.IGG);
  private static final Sample CSF_ALBUMIN = Sample.csf(Analyte.ALBUMIN);
  private static final Sample SERUM_ALBUMIN = Sample.serum(Analyte.ALBUMIN);

  private static double probability(Interpreted of, FindingCode code) {
    return of.uncertainty(code).probabilityAbove().orElseThrow();
  }

  private static Interval interval(Interpreted of, FindingCode code) {
    return of.uncertainty(code).interval95().orElseThrow();
  }

  /** Panel 2 of formulas.md, section 16: the project's own. */
  private static Samples second() {
    return Samples.none()
        .withPair(Analyte.ALBUMIN, 220, 42_000)
        .withPair(Analyte.IGG, 62, 11_000)
        .withPair(Analyte.KAPPA, 4.5, 13);
  }

  @Nested
  class Published {

    /** Paired panel: python3-uncertainties 3.1.6 and Monte Carlo, 2·10⁶ draws. */
    private static Interpreted paired() {
      return Samples.none()
          .with(CSF_IGG, 34.5, 1.7 / 34.5)
          .with(SERUM_IGG, 10_200, 410.0 / 10_200)
          .with(CSF_ALBUMIN, 251, 9.0 / 251)
          .with(SERUM_ALBUMIN, 41_300, 1_200.0 / 41_300)
          .interpreted();
    }

    @Test
    void measure_pairedPanel_agreesWithMonteCarlo() {
      Interval index = interval(paired(), IGG_INDEX);

      // 95 % .4766–.6489, P(index > 0.7) .0017; the source draws normal, not log-normal inputs.
      assertThat(index.lower()).isCloseTo(0.4766, within(0.0015));
      assertThat(index.upper()).isCloseTo(0.6489, within(0.0015));
      assertThat(probability(paired(), IGG_INDEX)).isCloseTo(0.0017, within(0.0003));
      OutsideCheck.of(
              "Paired panel: IgG index, 95 % interval and P(index > 0.7)",
              "python3-uncertainties 3.1.6 and Monte Carlo, 2,000,000 draws",
              "absolute 0.0015 and 0.0003")
          .toTable(0.0015);
    }

    @Test
    void measure_pairedPanelUnderTheLimit_hasNoSynthesis() {
      // 1 − Qlim/Q −.2990550, local IgG −10.3174 mg/L → report 0
      assertThat(interval(paired(), IGG_FRACTION)).isEqualTo(Interval.between(0, 0));
      assertThat(interval(paired(), IGG_LOCAL)).isEqualTo(Interval.between(0, 0));
    }

    @Test
    void measure_fourInputsOfFivePercent_hasTheExactImprecision() {
      // closed form: CV² = (1 + 0.05²)⁴ − 1, CV .1001876367; first order gives .1
      Interval index = interval(second().interpreted(), IGG_INDEX);
      double sigma = Math.log(index.upper() / index.lower()) / (2 * 1.959963984540054);

      assertThat(Math.sqrt(Math.expm1(sigma * sigma))).isCloseTo(0.1001876367, within(1e-8));
    }

    @Test
    void below_ofJcgm106_isTheConformanceProbability() {
      // JCGM 106:2012: limit −5.40 V, y −5.47 V, u 0.05 V → Φ(1.4) = 0.9192433
      assertThat(StandardNormal.below((-5.40 + 5.47) / 0.05)).isCloseTo(0.9192433, within(1e-7));
    }
  }

  @Nested
  class Laws {

    @ParameterizedTest
    @ValueSource(doubles = {1, 2.5, 1000})
    void measure_underAnotherUnit_isTheSame(double factor) {
      Interpreted plain = second().interpreted();
      Interpreted scaled =
          Samples.none()
              .withPair(Analyte.ALBUMIN, 220, 42_000)
              .withPair(Analyte.IGG, 62 * factor, 11_000 * factor)
              .interpreted();

      assertThat(probability(scaled, IGG_QUOTIENT))
          .isCloseTo(probability(plain, IGG_QUOTIENT), within(1e-12));
      assertThat(interval(scaled, IGG_LOCAL).upper() / factor)
          .isCloseTo(interval(plain, IGG_LOCAL).upper(), within(1e-6));
    }

    @Test
    void probability_ofQuotientFractionAndAmount_isTheSame() {
      for (int number = 0; number < 50; number++) {
        Interpreted panel = Interpreted.of(RandomPanels.of(number));

        assertThat(probability(panel, IGG_FRACTION)).isEqualTo(probability(panel, IGG_QUOTIENT));
        assertThat(probability(panel, IGG_LOCAL)).isEqualTo(probability(panel, IGG_QUOTIENT));
      }
    }

    @Test
    void probability_atTheLimit_isOneHalf() {
      Interpreted panel =
          Samples.none()
              .withPair(Analyte.ALBUMIN, 200, 40_000)
              .withPair(Analyte.IGG, 35, 10_000)
              .interpreted();

      assertThat(probability(panel, IGG_INDEX)).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void probability_ofRisingCsfIgg_rises() {
      double last = -1;
      for (double igg = 20; igg < 60; igg += 2) {
        Interpreted panel =
            Samples.none()
                .withPair(Analyte.ALBUMIN, 200, 40_000)
                .withPair(Analyte.IGG, igg, 10_000)
                .interpreted();
        double now = probability(panel, IGG_QUOTIENT);

        assertThat(now).isGreaterThan(last);
        last = now;
      }
    }

    @Test
    void probability_ofVanishingError_becomesAStep() {
      for (double cv : new double[] {1e-3, 1e-5, 1e-9, 0}) {
        Interpreted over =
            Samples.none()
                .withPair(Analyte.ALBUMIN, 200, 40_000, cv)
                .withPair(Analyte.IGG, 35.5, 10_000, cv)
                .interpreted();

        assertThat(probability(over, IGG_INDEX)).isGreaterThan(0.999);
        assertThat(probability(over, IGG_QUOTIENT)).isGreaterThan(0.999);
      }
    }

    @ParameterizedTest
    @EnumSource
    void measure_anyCode_staysInBounds(FindingCode code) {
      for (int number = 0; number < 60; number++) {
        Uncertainty of = Interpreted.of(RandomPanels.of(number)).uncertainty(code);

        of.probabilityAbove().ifPresent(p -> assertThat(p).isBetween(0.0, 1.0));
        of.interval95().ifPresent(i -> assertThat(i.lower()).isLessThanOrEqualTo(i.upper()));
      }
    }

    @Test
    void probabilities_alone_areThoseOfMeasure() {
      for (int number = 0; number < 20; number++) {
        Interpreted panel = Interpreted.of(RandomPanels.of(number));
        Map<FindingCode, Double> alone =
            Interpreted.UNCERTAINTIES.probabilities(panel.panel(), panel.findings());

        panel
            .findings()
            .all()
            .forEach(
                f ->
                    assertThat(
                            alone.containsKey(f.code())
                                ? OptionalDouble.of(alone.get(f.code()))
                                : OptionalDouble.empty())
                        .isEqualTo(f.uncertainty().probabilityAbove()));
      }
    }
  }

  @Nested
  class Pinned {

    /** Own output; a simulation of 8·10⁶ draws agrees within 0.05 %. */
    @Test
    void measure_secondPanel_isUnchanged() {
      Interpreted panel = second().with(Sample.csf(Analyte.TOTAL_PROTEIN), 480).interpreted();

      assertThat(probability(panel, ALBUMIN_QUOTIENT)).isCloseTo(0.0036067175, within(1e-9));
      assertThat(probability(panel, IGG_QUOTIENT)).isCloseTo(0.9999472681, within(1e-9));
      assertThat(probability(panel, IGG_SYNTHESIS_RATE)).isCloseTo(0.9999999381, within(1e-9));
      assertThat(probability(panel, TOTAL_PROTEIN)).isCloseTo(0.2069785602, within(1e-9));
      assertThat(interval(panel, IGG_FRACTION).lower()).isCloseTo(0.1901074, within(1e-6));
      assertThat(interval(panel, IGG_FRACTION).upper()).isCloseTo(0.4744599, within(1e-6));
      assertThat(interval(panel, IGG_LOCAL).lower()).isCloseTo(11.21802, within(1e-4));
      assertThat(interval(panel, IGG_LOCAL).upper()).isCloseTo(31.11415, within(1e-4));
      assertThat(interval(panel, IGG_SYNTHESIS_RATE).lower()).isCloseTo(10.11022, within(1e-4));
      assertThat(interval(panel, IGG_SYNTHESIS_RATE).upper()).isCloseTo(17.87166, within(1e-4));
    }
  }
}
