package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.measurement.Answer;
import java.util.Arrays;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CohortModelTest {

  private static final Facts FACTS = Facts.standard();

  private static Facts ownShare(double share) {
    return FACTS.with(
        new Policy(
            "audit",
            Map.of(
                "probability.share.own",
                new Policy.Change(new FactValue.Figure(share), "audit of 2030"))));
  }

  private static double[] numbers(String words) {
    return Arrays.stream(words.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  /** An independent program: bisection for P₋ and 2²¹ to 2²² points of Sobol. */
  @ParameterizedTest
  @CsvSource({
    "0.5 0.5, MRI_NOT_USED, true, , 0.6526 0.4447 0.9512 0.6080",
    "0.5 0.5, MRI_NOT_USED, false, , 0.2633 0.0157 0.5916 0.6080",
    "0.6 0.8, MRI_USED_DIS, false, , 0.5803 0.2248 0.8536 0.6937",
    "0.05 0.15, MRI_NOT_USED, true, , 0.1993 0.0575 0.5469 0.3676",
    "0.5 0.5, MRI_USED_DIS, false, 0.85, 0.3378 0.0720 0.7129 0.8500"
  })
  void point_workedExamples_agree(
      String range, CohortContext context, boolean isFound, Double own, String expected) {
    double[] stated = numbers(range);
    double[] wanted = numbers(expected);
    CohortModel model = CohortModel.of(context, own == null ? FACTS : ownShare(own));
    Prior prior = new Prior(stated[0], stated[1], Answer.NO);
    Proportion.Ends ends = model.interval95(prior, isFound);

    assertThat(model.point(prior, isFound)).isCloseTo(wanted[0], within(1e-4));
    assertThat(ends.lower()).isCloseTo(wanted[1], within(5e-4));
    assertThat(ends.upper()).isCloseTo(wanted[2], within(5e-4));
    assertThat(model.share(prior)).isCloseTo(wanted[3], within(1e-4));
    OutsideCheck.of(
            "Probability after bands: point, predictive interval and share, five examples",
            "an independent program by bisection and Sobol points",
            "1e-4 point and share, 5e-4 ends")
        .toTable("5 of 5 agree");
  }

  /** The law: with and without bands average to the stated prior, whatever was stated. */
  @Test
  void point_randomPriors_keepTheStatedPriorExactly() {
    SplittableRandom random = new SplittableRandom(14);
    for (int i = 0; i < 60; i++) {
      double low = 0.05 + 0.6 * random.nextDouble();
      Prior prior = new Prior(low, low + 0.3 * random.nextDouble(), Answer.NO);
      CohortContext context =
          random.nextBoolean() ? CohortContext.MRI_NOT_USED : CohortContext.MRI_USED_DIS;
      CohortModel model = CohortModel.of(context, FACTS);
      double share = model.share(prior);

      assertThat(share * model.point(prior, true) + (1 - share) * model.point(prior, false))
          .isCloseTo(prior.middle(), within(1e-12));
    }
  }

  /** One cohort: q P₊ + (1 − q) P₋ = π, and the odds differ by ψ. */
  @Test
  void without_randomCohorts_keepsMarginAndOddsRatio() {
    SplittableRandom random = new SplittableRandom(15);
    for (int i = 0; i < 500; i++) {
      double pi = 0.01 + 0.98 * random.nextDouble();
      double q = 0.01 + 0.98 * random.nextDouble();
      double psi = Math.exp(10 * random.nextDouble() - 5);
      double none = CohortModel.without(pi, q, psi);
      double with = psi * none / (1 + (psi - 1) * none);

      assertThat(q * with + (1 - q) * none).isCloseTo(pi, within(1e-9));
      assertThat(CohortModel.logit(with) - CohortModel.logit(none))
          .isCloseTo(Math.log(psi), within(1e-6));
    }
  }

  @Test
  void below_risingThreshold_risesFromNoneToAll() {
    CohortModel model = CohortModel.of(CohortContext.MRI_NOT_USED, FACTS);
    Prior prior = new Prior(0.2, 0.4, Answer.NO);
    for (boolean isFound : new boolean[] {true, false}) {
      double before = 0;
      for (double t = 0.01; t < 1; t += 0.01) {
        double here = model.below(t, prior, isFound);
        assertThat(here).isBetween(before - 1e-12, 1 + 1e-12);
        before = here;
      }
      assertThat(before).isGreaterThan(0.95);
    }
  }
}
