package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CalibrationTest {

  @Test
  void scores_twoPeople_areThoseByHand() {
    Calibration two = Calibration.NONE.with(0.8, true).merge(Calibration.NONE.with(0.4, false));

    // (0.2² + 0.4²)/2; −(ln 0.8 + ln 0.6)/2
    assertThat(two.brier()).isCloseTo(0.1, within(1e-12));
    assertThat(two.logScore()).isCloseTo(0.366984587540703, within(1e-12));
    assertThat(two.people()).isEqualTo(2);
    assertThat(two.happened()).isEqualTo(1);
    assertThat(two.foretold()).isCloseTo(1.2, within(1e-12));
  }

  @Test
  void with_certainty_isRefused() {
    assertThatThrownBy(() -> Calibration.NONE.with(1, true))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
