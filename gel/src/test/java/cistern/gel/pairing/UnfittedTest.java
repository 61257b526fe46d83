package cistern.gel.pairing;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.GelFacts;
import org.junit.jupiter.api.Test;

/** Laws of Bayes' rule; the bounds are project rules. */
class UnfittedTest {
  private static final Unfitted UNFITTED = Unfitted.of(GelFacts.standard());

  @Test
  void of_noAnswer_saysNoCounterpart() {
    assertThat(UNFITTED.of(0, 0.05)).isLessThan(0.01);
  }

  @Test
  void of_answerAsHighAsTheBand_saysCounterpart() {
    assertThat(UNFITTED.of(1, 0.05)).isGreaterThan(0.95);
  }

  @Test
  void of_deafSerum_staysAtThePrior() {
    assertThat(UNFITTED.of(0.3, 50)).isBetween(0.15, 0.25);
  }

  @Test
  void of_risingAnswer_neverFalls() {
    double before = 0;
    for (double answer = 0; answer <= 1; answer += 0.05) {
      double chance = UNFITTED.of(answer, 0.1);
      assertThat(chance).isGreaterThanOrEqualTo(before - 0.001);
      before = chance;
    }
  }
}
