package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Every expected number is arithmetic on the centres given; lanes are 60 wide. */
class SeatingTest {
  private static final Seating SEATING =
      new Seating(0.3, 0.7, 1, 2, new Seating.Clearness(0.9, 1.5));

  private static List<LanePlace> lanes(double... centres) {
    return Arrays.stream(centres).mapToObj(c -> new LanePlace(c, 60, 0.01 * c)).toList();
  }

  private static Optional<List<Double>> seated(String names, double... centres) {
    return SEATING
        .seat(LanePlan.parse(names), lanes(centres))
        .map(f -> f.lanes().stream().map(LanePlace::xCentre).toList());
  }

  private static boolean isContradicted(String names, double... centres) {
    return SEATING.isContradicted(LanePlan.parse(names), lanes(centres));
  }

  @Test
  void seat_falseLaneAtTheEndAndBlankAsGap_nameGoesByTheGap() {
    assertThat(seated("csf,serum,blank,csf,serum", 0, 100, 200, 400, 500))
        .contains(List.of(100.0, 200.0, 300.0, 400.0, 500.0));
  }

  @Test
  void seat_sampleUnseenAtTheEnd_isPutThere() {
    assertThat(seated("csf,serum,blank,csf,serum,csf", 100, 200, 400, 500))
        .contains(List.of(100.0, 200.0, 300.0, 400.0, 500.0, 600.0));
    assertThat(
            SEATING
                .seat(LanePlan.parse("csf,serum,blank,csf,serum"), lanes(100, 200, 400, 500))
                .orElseThrow()
                .isSure())
        .isTrue();
  }

  @Test
  void seat_laneMissingAtEitherEnd_isLeft() {
    assertThat(seated("csf,serum,csf,serum", 100, 200, 300)).isEmpty();
  }

  @Test
  void seat_irregularOrFew_isLeft() {
    assertThat(seated("csf,serum,blank,csf", 100, 200, 345)).isEmpty();
    assertThat(seated("csf,serum,blank", 100, 200)).isEmpty();
  }

  @Test
  void seat_farMoreNamesThanLanes_isLeft() {
    assertThat(seated("blank,blank,blank,blank,csf,serum,blank,csf,serum", 100, 200, 400, 500))
        .isEmpty();
  }

  @Test
  void isContradicted_gapWhereNoBlankIsNamed_is() {
    assertThat(isContradicted("csf,serum,csf,serum", 100, 200, 400, 500)).isTrue();
    assertThat(isContradicted("csf,blank,serum,csf,serum", 100, 200, 400, 500)).isTrue();
    assertThat(isContradicted("csf,serum,blank,csf,serum", 100, 200, 300, 400)).isTrue();
  }

  @Test
  void isContradicted_gapAtTheBlank_isNot() {
    assertThat(isContradicted("csf,serum,blank,csf,serum", 100, 200, 400, 500)).isFalse();
    assertThat(isContradicted("blank,csf,serum,csf", 100, 200, 300)).isFalse();
    assertThat(isContradicted("csf,serum,csf", 100, 200, 300)).isFalse();
    assertThat(isContradicted("csf,serum,csf", 100, 200, 345)).isFalse();
  }
}
