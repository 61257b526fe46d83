package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import org.junit.jupiter.api.Test;

class AgreementTest {

  /** Rows the New Orleans neurologist, columns the Winnipeg neurologist; certainty of MS. */
  private static final long[][] WINNIPEG = {
    {38, 5, 0, 1}, {33, 11, 3, 0}, {10, 14, 5, 6}, {3, 7, 3, 10}
  };

  private static final long[][] NEW_ORLEANS = {
    {5, 3, 0, 0}, {3, 11, 4, 0}, {2, 13, 3, 4}, {1, 2, 4, 14}
  };

  /** Source: Westlund and Kurland 1953, in Landis and Koch 1977; R vcd 1.4-11, MSPatients. */
  @Test
  void of_twoNeurologistsOnMs_isThePublishedAgreement() {
    Agreement winnipeg = Agreement.of(WINNIPEG).orElseThrow();
    Agreement newOrleans = Agreement.of(NEW_ORLEANS).orElseThrow();

    assertThat(winnipeg.kappa()).isCloseTo(0.207942464, within(1e-9));
    assertThat(winnipeg.error()).isCloseTo(0.0504553652, within(1e-9));
    assertThat(winnipeg.interval(0.95).lower()).isCloseTo(0.1090517653, within(1e-7));
    assertThat(newOrleans.kappa()).isCloseTo(0.296516568, within(1e-9));
    assertThat(newOrleans.error()).isCloseTo(0.0785038707, within(1e-9));
    assertThat(newOrleans.interval(0.95).upper()).isCloseTo(0.4503813267, within(1e-7));
    OutsideCheck.of(
            "Agreement of two neurologists on the certainty of MS, κ and its error",
            "Westlund and Kurland 1953, in Landis and Koch 1977; R vcd 1.4-11, MSPatients",
            "absolute 1e-9")
        .toTable("2 of 2 groups agree");
  }

  @Test
  void of_readersExchanged_isTheSame() {
    long[][] turned = new long[4][4];
    for (int i = 0; i < 4; i++) {
      for (int j = 0; j < 4; j++) {
        turned[j][i] = WINNIPEG[i][j];
      }
    }
    assertThat(Agreement.of(turned).orElseThrow().kappa())
        .isCloseTo(Agreement.of(WINNIPEG).orElseThrow().kappa(), within(1e-15));
    assertThat(Agreement.of(turned).orElseThrow().error())
        .isCloseTo(Agreement.of(WINNIPEG).orElseThrow().error(), within(1e-15));
  }

  @Test
  void of_identicalReaders_isOne() {
    Agreement same = Agreement.of(new long[][] {{7, 0}, {0, 9}}).orElseThrow();

    assertThat(same.kappa()).isEqualTo(1);
    assertThat(same.interval(0.95).upper()).isEqualTo(1);
    assertThat(same.cases()).isEqualTo(16);
  }

  @Test
  void of_oneWordOnly_hasNoAgreementBeyondChance() {
    assertThat(Agreement.of(new long[][] {{7, 0}, {0, 0}})).isEmpty();
    assertThat(Agreement.of(new long[][] {{0, 0}, {0, 0}})).isEmpty();
    assertThatThrownBy(() -> Agreement.of(new long[][] {{7, 0}}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
