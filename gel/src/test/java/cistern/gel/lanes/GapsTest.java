package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Every expected number is arithmetic on the centres given; lanes are 60 wide. */
class GapsTest {
  private static final Gaps GAPS = new Gaps(0.3, 0.6);
  private static final Extent SHEET = new Extent(0, 1000, true);

  private static List<LanePlace> lanes(double... centres) {
    return Arrays.stream(centres).mapToObj(c -> new LanePlace(c, 60, 0.01 * c)).toList();
  }

  private static Optional<List<Double>> filled(int named, Extent sheet, double... centres) {
    return GAPS.fill(lanes(centres), named, sheet)
        .map(places -> places.lanes().stream().map(LanePlace::xCentre).toList());
  }

  @Test
  void fill_oneLaneOut_isPutBetween() {
    assertThat(filled(5, SHEET, 100, 201, 400, 500))
        .contains(List.of(100.0, 201.0, 300.5, 400.0, 500.0));
    LanePlace put = GAPS.fill(lanes(100, 201, 400, 500), 5, SHEET).orElseThrow().lanes().get(2);
    assertThat(put.width()).isEqualTo(60);
    assertThat(put.slope()).isEqualTo(3.005);
  }

  @Test
  void fill_twoLanesOut_areSpread() {
    assertThat(filled(6, SHEET, 100, 200, 300, 600))
        .contains(List.of(100.0, 200.0, 300.0, 400.0, 500.0, 600.0));
  }

  @Test
  void fill_irregularRow_isLeft() {
    assertThat(filled(5, new Extent(0, 480, true), 100, 200, 345, 445)).isEmpty();
  }

  @Test
  void fill_otherNumber_isLeft() {
    assertThat(filled(8, SHEET, 100, 201, 400)).isEmpty();
    assertThat(filled(1, SHEET, 100, 200, 300)).isEmpty();
  }

  @Test
  void fill_moreRoomAtOneEnd_isPutThereAsAGuess() {
    assertThat(filled(4, new Extent(60, 500, true), 100, 200, 300))
        .contains(List.of(100.0, 200.0, 300.0, 400.0));
    assertThat(filled(4, new Extent(0, 360, true), 200, 250, 300))
        .contains(List.of(150.0, 200.0, 250.0, 300.0));
    assertThat(GAPS.fill(lanes(200, 250, 300), 4, new Extent(0, 360, true)).orElseThrow().isSure())
        .isFalse();
    assertThat(GAPS.fill(lanes(100, 200, 400), 4, SHEET).orElseThrow().isSure()).isTrue();
  }

  @Test
  void fill_evenRoomForTwo_onePutAtEitherEnd() {
    assertThat(filled(5, new Extent(0, 600, true), 200, 300, 400))
        .contains(List.of(100.0, 200.0, 300.0, 400.0, 500.0));
  }

  @Test
  void fill_oneTooManyOutOfTheMiddle_isDropped() {
    assertThat(filled(3, new Extent(0, 460, true), 50, 150, 250, 350))
        .contains(List.of(150.0, 250.0, 350.0));
    assertThat(filled(3, new Extent(0, 500, true), 100, 200, 300, 400)).isEmpty();
  }

  @Test
  void fill_evenRoomOrNone_isLeft() {
    assertThat(filled(4, new Extent(0, 600, true), 200, 300, 400)).isEmpty();
    assertThat(filled(4, new Extent(90, 430, true), 200, 300, 400)).isEmpty();
    assertThat(filled(4, new Extent(160, 440, true), 200, 300, 400)).isEmpty();
  }

  @Test
  void fill_twoLanes_sayNothingOfSteps() {
    assertThat(filled(3, SHEET, 100, 300)).isEmpty();
  }
}
