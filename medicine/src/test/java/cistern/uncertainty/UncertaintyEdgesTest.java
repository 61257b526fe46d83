package cistern.uncertainty;

import static cistern.finding.FindingCode.ALBUMIN_QUOTIENT;
import static cistern.finding.FindingCode.GLUCOSE_RATIO;
import static cistern.finding.FindingCode.IGG_FRACTION;
import static cistern.finding.FindingCode.IGG_INDEX;
import static cistern.finding.FindingCode.IGG_LOCAL;
import static cistern.finding.FindingCode.IGG_QUOTIENT;
import static cistern.finding.FindingCode.IGG_SYNTHESIS_RATE;
import static cistern.finding.FindingCode.KAPPA_INDEX;
import static cistern.finding.FindingCode.LAMBDA_INDEX;
import static cistern.finding.FindingCode.LEUKOCYTES;
import static cistern.finding.FindingCode.LEUKOCYTES_CORRECTED;
import static cistern.finding.FindingCode.MEASLES_ANTIBODY_INDEX;
import static cistern.finding.FindingCode.MRZ_REACTION;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.finding.FindingCode;
import cistern.finding.Uncertainty;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What has no uncertainty, what is certain, and limits that move in steps. */
class UncertaintyEdgesTest {

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
  class Edges {

    @Test
    void measure_codeWithoutLimit_hasAnIntervalOnly() {
      Interpreted panel = second().withPair(Analyte.LAMBDA, 0.9, 14).interpreted();

      assertThat(panel.uncertainty(LAMBDA_INDEX).interval95()).isPresent();
      assertThat(panel.uncertainty(LAMBDA_INDEX).probabilityAbove()).isEmpty();
    }

    @Test
    void measure_quotientWithoutAlbumin_hasAnIntervalOnly() {
      Interpreted panel = Samples.none().withPair(Analyte.IGG, 62, 11_000).interpreted();

      assertThat(panel.uncertainty(IGG_QUOTIENT).interval95()).isPresent();
      assertThat(panel.uncertainty(IGG_QUOTIENT).probabilityAbove()).isEmpty();
      assertThat(panel.uncertainty(IGG_FRACTION)).isEqualTo(Uncertainty.NONE);
    }

    @Test
    void measure_censoredInput_hasNothing() {
      Interpreted panel =
          second()
              .with(Sample.csf(Analyte.LACTATE), Interval.below(1.5), OptionalDouble.of(0.05))
              .interpreted();

      assertThat(panel.uncertainty(FindingCode.LACTATE)).isEqualTo(Uncertainty.NONE);
    }

    @Test
    void measure_albuminUnderItsLimit_leavesTheQuotientItsInterval() {
      Interpreted panel =
          Samples.none()
              .withPair(Analyte.IGG, 62, 11_000)
              .with(CSF_ALBUMIN, Interval.below(100), OptionalDouble.empty())
              .with(SERUM_ALBUMIN, 40_000)
              .interpreted();

      assertThat(panel.uncertainty(IGG_QUOTIENT).interval95()).isPresent();
      assertThat(panel.uncertainty(IGG_QUOTIENT).probabilityAbove()).isEmpty();
      assertThat(panel.uncertainty(IGG_INDEX)).isEqualTo(Uncertainty.NONE);
    }

    @Test
    void measure_cellsWithoutImprecision_haveNothing() {
      Interpreted panel =
          Samples.none()
              .with(Sample.csf(Analyte.LEUKOCYTES), 12)
              .with(Sample.csf(Analyte.ERYTHROCYTES), 900)
              .interpreted();

      assertThat(panel.uncertainty(LEUKOCYTES)).isEqualTo(Uncertainty.NONE);
      assertThat(panel.uncertainty(LEUKOCYTES_CORRECTED)).isEqualTo(Uncertainty.NONE);
    }

    @Test
    void measure_cellsWithImprecision_haveBoth() {
      Interpreted panel =
          Samples.none()
              .with(Sample.csf(Analyte.LEUKOCYTES), 6, 0.2)
              .with(Sample.csf(Analyte.ERYTHROCYTES), 900)
              .interpreted();

      // closed form: Φ(ln(6/5)/√ln(1.04)) = 0.8214; corrected by 0.9: Φ(ln(6/5.9)/√ln(1.04))
      assertThat(probability(panel, LEUKOCYTES)).isCloseTo(0.82138, within(1e-5));
      assertThat(probability(panel, LEUKOCYTES_CORRECTED)).isCloseTo(0.53382, within(1e-5));
      // 6·exp(∓1.96·√ln(1.04)) − 0.9
      assertThat(interval(panel, LEUKOCYTES_CORRECTED).lower()).isCloseTo(3.169, within(1e-3));
      assertThat(interval(panel, LEUKOCYTES_CORRECTED).upper()).isCloseTo(7.9456, within(1e-3));
    }

    @Test
    void measure_zeroValue_isDegenerate() {
      Interpreted panel =
          Samples.none()
              .withPair(Analyte.ALBUMIN, 220, 42_000)
              .withPair(Analyte.IGG, 0, 11_000)
              .interpreted();

      assertThat(interval(panel, IGG_QUOTIENT)).isEqualTo(Interval.between(0, 0));
      assertThat(interval(panel, IGG_LOCAL)).isEqualTo(Interval.between(0, 0));
      assertThat(interval(panel, IGG_FRACTION)).isEqualTo(Interval.between(0, 0));
      assertThat(probability(panel, IGG_QUOTIENT)).isZero();
      assertThat(interval(panel, IGG_SYNTHESIS_RATE).upper()).isNegative();
    }

    @Test
    void measure_zeroAntibody_isDegenerate() {
      Interpreted panel = second().withPair(Analyte.MEASLES_IGG, 0, 500).interpreted();

      assertThat(interval(panel, MEASLES_ANTIBODY_INDEX)).isEqualTo(Interval.between(0, 0));
      assertThat(probability(panel, MEASLES_ANTIBODY_INDEX)).isZero();
    }

    @Test
    void measure_exactInputs_areCertain() {
      Interpreted panel =
          Samples.none()
              .withPair(Analyte.ALBUMIN, 200, 40_000, 0)
              .withPair(Analyte.KAPPA, 0.61, 20, 0)
              .interpreted();
      double value = 0.61 / 20 / (200.0 / 40_000);

      // 6.1 counts as above, and the interval is the value itself
      assertThat(panel.findings().get(KAPPA_INDEX).verdict()).isEqualTo(Verdict.ABOVE);
      assertThat(interval(panel, KAPPA_INDEX)).isEqualTo(Interval.between(value, value));
      assertThat(probability(panel, KAPPA_INDEX)).isOne();
    }

    @Test
    void measure_doubtedValue_keepsIntervalAndProbability() {
      Interpreted panel =
          Samples.none()
              .withPair(Analyte.ALBUMIN, 220, 42_000)
              .with(CSF_IGG, 62)
              .with(SERUM_IGG, 110)
              .interpreted();

      assertThat(panel.findings().get(IGG_INDEX).verdict()).isEqualTo(Verdict.UNDETERMINED);
      assertThat(panel.uncertainty(IGG_INDEX).interval95()).isPresent();
      assertThat(panel.uncertainty(IGG_INDEX).probabilityAbove()).isPresent();
    }

    @Test
    void measure_withoutAge_hasNoLimitForAlbumin() {
      Panel aged = second().aged(35);
      Interpreted panel =
          Interpreted.of(Panel.of(Person.UNKNOWN, List.copyOf(aged.results().values())));

      assertThat(panel.uncertainty(ALBUMIN_QUOTIENT).interval95()).isPresent();
      assertThat(panel.uncertainty(ALBUMIN_QUOTIENT).probabilityAbove()).isEmpty();
    }

    @Test
    void measure_child_refersToTheUpperOfTwoLimits() {
      Interpreted panel =
          Interpreted.of(Samples.none().withPair(Analyte.ALBUMIN, 140, 40_000).aged(5));

      // children's table, 5 years: 0.5 to 3.5·10⁻³; the value lies on the upper one
      assertThat(probability(panel, ALBUMIN_QUOTIENT)).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void measure_policyLimit_movesTheProbability() {
      Policy policy =
          new Policy(
              "house",
              Map.of(
                  "igg-index.upper", new Policy.Change(new FactValue.Figure(1.076), "house rule"),
                  "cv.igg.csf", new Policy.Change(new FactValue.Figure(0), "house rule")));
      Interpreted panel = Interpreted.of(second().aged(35), Facts.standard().with(policy));

      // the index is 1.0760 (formulas.md, section 16), so the limit halves it
      assertThat(probability(panel, IGG_INDEX)).isCloseTo(0.5, within(2e-3));
    }
  }

  @Nested
  class GlucoseSteps {

    private static double probability(double csf, double serum, double cv) {
      return UncertaintyEdgesTest.probability(
          Samples.none().withPair(Analyte.GLUCOSE, csf, serum, cv).interpreted(), GLUCOSE_RATIO);
    }

    @Test
    void probability_atAStep_takesEachLimitHalfTheTime() {
      double step = 1000 / 180.156;

      // ratio 0.45 at 100 mg/dL, tiny error: over the limit 0.4 above, under 0.5 below the step
      assertThat(probability(0.45 * step, step, 1e-4)).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void probability_farFromAStep_isClosed() {
      // closed form: ratio 0.5 at its limit 0.5
      assertThat(probability(2, 4, 0.02)).isCloseTo(0.5, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.01, 0.3})
    void probability_onlySerumOrCsfVaries_isBetween(double cv) {
      Interpreted panel =
          Samples.none()
              .with(Sample.csf(Analyte.GLUCOSE), 2.5, cv)
              .with(Sample.serum(Analyte.GLUCOSE), 5.6, 0.05)
              .interpreted();

      assertThat(UncertaintyEdgesTest.probability(panel, GLUCOSE_RATIO))
          .isStrictlyBetween(0.0, 1.0);
    }
  }

  @Nested
  class Reaction {

    private static Samples viruses(double first, double second, double third) {
      double explained = 62.0 / 11_000;
      return Samples.none()
          .withPair(Analyte.ALBUMIN, 800, 42_000)
          .withPair(Analyte.IGG, 62, 11_000)
          .withPair(Analyte.MEASLES_IGG, 1000 * first * explained, 1000)
          .withPair(Analyte.RUBELLA_IGG, 1000 * second * explained, 1000)
          .withPair(Analyte.VARICELLA_ZOSTER_IGG, 1000 * third * explained, 1000);
    }

    @Test
    void probability_ofThreeHighIndices_isNearlyOne() {
      assertThat(probability(viruses(4, 4, 4).interpreted(), MRZ_REACTION)).isGreaterThan(0.9999);
      assertThat(probability(viruses(4, 0.8, 0.8).interpreted(), MRZ_REACTION)).isLessThan(0.001);
    }

    @Test
    void probability_ofOneOpenIndexBesideACertainOne_isThatOfTheOpenOne() {
      Interpreted panel = viruses(6, 1.6, 0.5).interpreted();

      assertThat(probability(panel, MRZ_REACTION))
          .isCloseTo(probability(panel, FindingCode.RUBELLA_ANTIBODY_INDEX), within(1e-4));
    }

    @Test
    void probability_ofCensoredIndex_isLeftOut() {
      Interpreted panel =
          second()
              .withPair(Analyte.MEASLES_IGG, 20, 1000)
              .with(Sample.csf(Analyte.RUBELLA_IGG), Interval.below(1), OptionalDouble.empty())
              .with(Sample.serum(Analyte.RUBELLA_IGG), 1000)
              .interpreted();

      assertThat(panel.findings().get(MRZ_REACTION).hasValue()).isTrue();
      assertThat(panel.uncertainty(MRZ_REACTION)).isEqualTo(Uncertainty.NONE);
    }

    @Test
    void probability_withoutAnyError_isCertain() {
      Interpreted panel =
          Samples.none()
              .withPair(Analyte.ALBUMIN, 220, 42_000, 0)
              .withPair(Analyte.IGG, 20, 11_000, 0)
              .withPair(Analyte.MEASLES_IGG, 5, 1000, 0)
              .withPair(Analyte.RUBELLA_IGG, 5, 1000, 0)
              .withPair(Analyte.VARICELLA_ZOSTER_IGG, 1, 1000, 0)
              .interpreted();

      assertThat(probability(panel, MRZ_REACTION)).isOne();
    }
  }
}
