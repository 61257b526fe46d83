package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import cistern.gel.lanes.LanePlan.NamedPair;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected pairs: the rules of naming in the project's contract. */
class LanePlanTest {
  private static NamedPair pair(int number, int csf, int serum) {
    return new NamedPair(number, OptionalInt.of(csf), OptionalInt.of(serum));
  }

  @Test
  void pairs_neighbours_areTwoByTwo() {
    assertThat(LanePlan.parse("csf,serum,csf,serum").pairs())
        .containsExactly(pair(0, 0, 1), pair(1, 2, 3));
  }

  @Test
  void pairs_control_isLeftOut() {
    LanePlan plan = LanePlan.parse("csf,control,serum");
    assertThat(plan.pairs()).containsExactly(pair(0, 0, 2));
    assertThat(plan.isControlled()).isTrue();
  }

  @Test
  void pairs_blank_holdsAPlace() {
    assertThat(LanePlan.parse("csf,blank,csf,serum").pairs())
        .containsExactly(new NamedPair(0, OptionalInt.of(0), OptionalInt.empty()), pair(1, 2, 3));
  }

  @Test
  void pairs_numbered_areTheirOwn() {
    assertThat(LanePlan.parse("csf:1,csf:2,serum:1,serum:2").pairs())
        .containsExactly(pair(1, 0, 2), pair(2, 1, 3));
  }

  @Test
  void withoutBlanks_keepsThePairs() {
    assertThat(LanePlan.parse("blank,csf,csf,serum").withoutBlanks().pairs())
        .containsExactly(new NamedPair(0, OptionalInt.of(0), OptionalInt.empty()), pair(1, 1, 2));
  }

  private static LanePlan placed(int lanes) {
    List<NamedLane> placed = new ArrayList<>();
    for (int i = 0; i < lanes; i++) {
      Optional<NamedLane.Place> place = Optional.of(new NamedLane.Place(50 + 90 * i, 60));
      placed.add(new NamedLane(LaneKind.UNKNOWN, OptionalInt.empty(), place));
    }
    return new LanePlan(placed);
  }

  @Test
  void withPlaces_asManyPlacesWithOrWithoutBlanks_keepsNamesAndPairs() {
    LanePlan plan = LanePlan.parse("csf:3,blank,serum:3");

    assertThat(plan.withPlaces(placed(3)).isPlaced()).isTrue();
    assertThat(plan.withPlaces(placed(3)).pairs()).containsExactly(pair(3, 0, 2));
    assertThat(plan.withPlaces(placed(2)).pairs()).containsExactly(pair(3, 0, 1));
    assertThat(plan.reversed().pairs()).containsExactly(pair(3, 2, 0));
  }

  @Test
  void withPlaces_otherCount_saysBoth() {
    assertThatThrownBy(() -> LanePlan.parse("csf,serum").withPlaces(placed(4)))
        .hasMessageContaining("2 lanes are named and the lane file has 4");
  }

  @Test
  void pairs_kindTwiceInAPair_theFirstCounts() {
    assertThat(LanePlan.parse("csf:1,csf:1,serum:1,serum:1").pairs())
        .containsExactly(pair(1, 0, 2));
  }

  @Test
  void isNone_nothingSaid_is() {
    assertThat(LanePlan.NONE.isNone()).isTrue();
    assertThat(LanePlan.NONE.isPlaced()).isFalse();
  }

  @Test
  void parse_withPlaces_isFromLeftToRightAndInTheSameWords() {
    LanePlan plan = LanePlan.parse("serum:4@176.5/60, csf:4@88/60.25");

    assertThat(plan.isPlaced()).isTrue();
    assertThat(plan.pairs()).containsExactly(pair(4, 0, 1));
    assertThat(plan.toWords()).isEqualTo("csf:4@88/60.2,serum:4@176.5/60");
    assertThat(LanePlan.parse("csf:1,blank").toWords()).isEqualTo("csf:1,blank");
  }

  @Test
  void parse_placeOfOneLaneOnly_isRefused() {
    assertThatThrownBy(() -> LanePlan.parse("csf@88/60,serum"))
        .hasMessage("either every lane has a place or none");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "liquor",
        "csf:x",
        "csf:1:2",
        "",
        "unknown",
        "csf,,serum",
        "csf@88",
        "csf@8/0",
        "csf@x/9"
      })
  void parse_noKind_isRefused(String names) {
    assertThatThrownBy(() -> LanePlan.parse(names))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("csf, serum, control or blank");
  }

  @Test
  void parse_list_isTheSame() {
    assertThat(LanePlan.parse(List.of("csf", "serum"))).isEqualTo(LanePlan.parse("csf,serum"));
  }
}
