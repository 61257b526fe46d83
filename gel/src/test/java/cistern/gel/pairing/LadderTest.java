package cistern.gel.pairing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class LadderTest {
  private static final Ladder LADDER = new Ladder(4, 0.7, 12, 30, 0.1, 0.04);

  @Test
  void isLadder_evenRungs_is() {
    assertThat(LADDER.isLadder(List.of(100.0, 120.0, 140.2, 159.9), 4, 3)).isTrue();
  }

  @Test
  void isLadder_threeRungs_isNot() {
    assertThat(LADDER.isLadder(List.of(100.0, 120.0, 140.0), 3, 3)).isFalse();
  }

  @Test
  void isLadder_unevenRungs_isNot() {
    assertThat(LADDER.isLadder(List.of(100.0, 120.0, 155.0, 165.0), 4, 3)).isFalse();
  }

  @Test
  void isLadder_wideRungs_isNot() {
    assertThat(LADDER.isLadder(List.of(100.0, 200.0, 300.0, 400.0), 4, 3)).isFalse();
  }

  @Test
  void isLadder_farButEvenRungs_is() {
    assertThat(LADDER.isLadder(List.of(100.0, 160.0, 221.0, 280.0), 4, 3)).isTrue();
    assertThat(LADDER.isLadder(List.of(100.0, 160.0, 225.0, 280.0), 4, 3)).isFalse();
  }

  @Test
  void isLadder_fewOfManyBands_isNot() {
    assertThat(LADDER.isLadder(List.of(100.0, 120.0, 140.0, 160.0), 9, 3)).isFalse();
  }
}
