package cistern.gel.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.GelFacts;
import cistern.gel.bands.Band;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Laws of the alignment; bands of σ 3 in a picture of 1,000 rows. */
class AlignmentSearchTest {
  private static final double[] ROWS = {210, 262, 333, 420, 455, 610};
  private static final AlignmentSearch SEARCH =
      new AlignmentSearch(GelFacts.standard(), 3, 1000, 1);

  private static List<Band> bands(double shift, double stretch) {
    return Arrays.stream(ROWS)
        .map(y -> y + shift + stretch * (y - 400))
        .mapToObj(y -> new Band(y, 0.3, 3, 20, 1, 0, 1, 10, 0, 0.99))
        .toList();
  }

  private static void checkLaysBandsOnEachOther(Alignment best, List<Band> serum) {
    for (int i = 0; i < ROWS.length; i++) {
      assertThat(best.toSerum(ROWS[i])).isCloseTo(serum.get(i).y(), within(1.5));
    }
  }

  @Test
  void search_aLaneWithItself_staysWhereItIs() {
    List<Band> lane = bands(0, 0);
    Alignment best = SEARCH.search(lane, lane, 0, 400).getFirst();
    assertThat(best.shift()).isCloseTo(0, within(1e-9));
    assertThat(best.stretch()).isCloseTo(0, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-9, -4, 2.5, 9})
  void search_aShiftedLane_isLaidBack(double shift) {
    List<Band> serum = bands(shift, 0);
    checkLaysBandsOnEachOther(SEARCH.search(bands(0, 0), serum, 0, 400).getFirst(), serum);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.01, 0.01})
  void search_aStretchedLane_isLaidBack(double stretch) {
    List<Band> serum = bands(0, stretch);
    checkLaysBandsOnEachOther(SEARCH.search(bands(0, 0), serum, 0, 400).getFirst(), serum);
  }

  @Test
  void search_aShiftThatWasForetold_costsNothing() {
    double still = SEARCH.evidence(bands(0, 0), bands(0, 0), 0, 400);
    double moved = SEARCH.evidence(bands(0, 0), bands(40, 0), 40, 400);
    double untold = SEARCH.evidence(bands(0, 0), bands(40, 0), 0, 400);
    assertThat(moved).isCloseTo(still, within(1e-9));
    assertThat(untold).isLessThan(still - 5);
  }

  @Test
  void search_anyTwoLanes_weightsSumToOneBestFirst() {
    List<Alignment> kept = SEARCH.search(bands(0, 0), bands(5, 0.004), 0, 400);
    assertThat(kept.stream().mapToDouble(Alignment::weight).sum()).isCloseTo(1, within(1e-12));
    for (int i = 1; i < kept.size(); i++) {
      assertThat(kept.get(i).weight()).isLessThanOrEqualTo(kept.get(i - 1).weight());
    }
  }

  @Test
  void toCsf_ofToSerum_isTheRowItself() {
    Alignment a = new Alignment(7, 0.011, 400, 1, 0);
    assertThat(a.toCsf(a.toSerum(123.4))).isCloseTo(123.4, within(1e-9));
  }
}
