package cistern.gel.bands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every expected number is what the test itself laid. */
class AlignmentTest {
  private static List<Band> bands(double alone, int... rows) {
    return Arrays.stream(rows)
        .mapToObj(row -> new Band(row, row, 5, 0.3, 20, 0.95, alone))
        .toList();
  }

  @Test
  void of_serumTwentyRowsLower_isShiftedByTwenty() {
    Alignment alignment =
        Alignment.of(bands(0.02, 420, 743, 760, 862), bands(0, 440, 763, 780, 882));

    assertThat(alignment.shift()).isEqualTo(20);
    assertThat(alignment.distance(bands(0, 743).getFirst(), bands(0, 763).getFirst()))
        .isCloseTo(0, within(3.0));
    assertThat(alignment.csfRow(bands(0, 882).getFirst())).isBetween(859, 865);
  }

  @Test
  void of_closeRungs_staysWithTheNearestOfEqualAnswers() {
    Alignment alignment =
        Alignment.of(bands(0.02, 600, 614, 628, 642), bands(0, 600, 614, 628, 642));

    assertThat(alignment).isEqualTo(new Alignment(0, 0));
  }

  @Test
  void of_serumStretched_followsIt() {
    Alignment alignment =
        Alignment.of(bands(0.02, 240, 440, 840, 1040), bands(0, 232, 436, 844, 1048));

    assertThat(alignment.distance(bands(0, 240).getFirst(), bands(0, 232).getFirst()))
        .isCloseTo(0, within(4.0));
    assertThat(alignment.distance(bands(0, 1040).getFirst(), bands(0, 1048).getFirst()))
        .isCloseTo(0, within(4.0));
  }

  @Test
  void of_bandsThatTheNetCallsAlone_areNotDrawnTogether() {
    assertThat(Alignment.of(bands(1, 300, 500), bands(0, 320, 520))).isEqualTo(new Alignment(0, 0));
  }
}
