package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every expected number is arithmetic on the centres given. */
class GapsTest {
  private static final Gaps GAPS = new Gaps(0.12);

  private static List<LanePlace> lanes(double... centres) {
    return Arrays.stream(centres).mapToObj(c -> new LanePlace(c, 60, 0.01 * c)).toList();
  }

  private static List<Double> filled(double... centres) {
    return GAPS.fill(lanes(centres)).stream().map(LanePlace::xCentre).toList();
  }

  @Test
  void fill_oneLaneOut_isPutBetween() {
    assertThat(filled(100, 201, 400, 500)).containsExactly(100.0, 201.0, 300.5, 400.0, 500.0);
    LanePlace put = GAPS.fill(lanes(100, 201, 400, 500)).get(2);
    assertThat(put.width()).isEqualTo(60);
    assertThat(put.slope()).isEqualTo(3.005);
  }

  @Test
  void fill_twoLanesOut_areSpread() {
    assertThat(filled(100, 200, 300, 600))
        .containsExactly(100.0, 200.0, 300.0, 400.0, 500.0, 600.0);
  }

  @Test
  void fill_irregularRow_staysAsItIs() {
    assertThat(filled(100, 200, 345, 445)).containsExactly(100.0, 200.0, 345.0, 445.0);
  }

  @Test
  void fill_regularRow_staysAsItIs() {
    assertThat(filled(100, 200, 300)).containsExactly(100.0, 200.0, 300.0);
  }

  @Test
  void fill_twoLanes_sayNothingOfSteps() {
    assertThat(filled(100, 300)).containsExactly(100.0, 300.0);
  }
}
