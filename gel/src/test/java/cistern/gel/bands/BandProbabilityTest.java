package cistern.gel.bands;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.GelFacts;
import org.junit.jupiter.api.Test;

class BandProbabilityTest {
  private static double chance(double texture) {
    Band band = new Band(100, 0.03, 3, 8, 0.9, 0.1, 0.1, texture, 0, 0);
    return BandProbability.of(GelFacts.standard()).of(band, 3, false);
  }

  /** The odds at 6 times the texture fall by (3/6)⁴ at 3 times, and hardly from 12 to 6. */
  @Test
  void of_heightThatGrainReaches_isDoubted() {
    assertThat(odds(chance(3)) / odds(chance(6))).isBetween(0.05, 0.07);
    assertThat(odds(chance(6)) / odds(chance(12))).isBetween(0.9, 1.0);
  }

  private static double odds(double chance) {
    return chance / (1 - chance);
  }
}
