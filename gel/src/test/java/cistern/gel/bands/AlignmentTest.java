package cistern.gel.bands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.net.PairMaps;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Every expected number is what the test itself laid. */
class AlignmentTest {
  /** What a net would say that sees bands at some rows, all of the CSF's as alone as told. */
  private static PairMaps maps(double alone, int[] csf, int[] serum) {
    float[] rows = new float[3 * PairMaps.ROWS];
    Arrays.stream(csf).forEach(row -> rows[row] = 0.95f);
    Arrays.stream(serum).forEach(row -> rows[PairMaps.ROWS + row] = 0.95f);
    Arrays.stream(csf).forEach(row -> rows[2 * PairMaps.ROWS + row] = (float) alone);
    return new PairMaps(rows, new float[4], new float[3], 0);
  }

  private static int[] at(int... rows) {
    return rows;
  }

  @Test
  void of_serumTwentyRowsLower_isShiftedByTwenty() {
    Alignment alignment = Alignment.of(maps(0.02, at(420, 743, 760, 862), at(440, 763, 780, 882)));

    assertThat(alignment.shift()).isEqualTo(20);
    assertThat(alignment.isAside()).isTrue();
    assertThat(alignment.distance(743, 763)).isCloseTo(0, within(3.0));
    assertThat(alignment.csfRow(882)).isBetween(859, 865);
  }

  @Test
  void of_closeRungs_staysWithTheNearestOfEqualAnswers() {
    Alignment alignment = Alignment.of(maps(0.02, at(600, 614, 628, 642), at(600, 614, 628, 642)));

    assertThat(alignment).isEqualTo(new Alignment(0, 0));
    assertThat(alignment.isAside()).isFalse();
  }

  @Test
  void of_serumStretched_followsIt() {
    Alignment alignment =
        Alignment.of(maps(0.02, at(240, 440, 840, 1040), at(232, 436, 844, 1048)));

    assertThat(alignment.distance(240, 232)).isCloseTo(0, within(4.0));
    assertThat(alignment.distance(1040, 1048)).isCloseTo(0, within(4.0));
  }

  @Test
  void of_bandsThatTheNetCallsAlone_areNotDrawnTogether() {
    assertThat(Alignment.of(maps(1, at(300, 500), at(320, 520)))).isEqualTo(new Alignment(0, 0));
  }

  @Test
  void of_rows_laysARowOfTheSerumBesideItsCounterpart() {
    Strip.Rows csf = new Strip.Rows(100, 100 + 2.0 * PairMaps.ROWS);
    Strip.Rows serum = new Alignment(20, 0.007).of(csf);
    int counterpart = 240 + 20 + (int) Math.round(0.007 * (240 - 640));

    assertThat(serum.at(240)).isCloseTo(csf.at(counterpart), within(1.5));
    assertThat(serum.rowOf(serum.at(240))).isCloseTo(240, within(1e-9));
  }
}
