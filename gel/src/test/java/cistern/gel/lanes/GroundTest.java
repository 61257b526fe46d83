package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.gel.bands.SciPyNumbers;
import java.io.IOException;
import org.junit.jupiter.api.Test;

class GroundTest {
  /** The numbers of SciPy; single precision here. */
  @Test
  void flatten_aProfile_agreesWithSciPy() throws IOException {
    float[] flat = Ground.flatten(SciPyNumbers.profile(), new int[] {0, 120}, 9, false);
    double deviation = SciPyNumbers.deviation(flat, SciPyNumbers.read("opening"));

    assertThat(deviation).isLessThan(1e-6);
    OutsideCheck.of(
            "Ground by a flat opening and running means, 120 columns",
            "scipy.ndimage.grey_opening and correlate1d, SciPy 1.17.1",
            "absolute 1e-6")
        .toTable(deviation);
  }

  /** The numbers of scikit-image; single precision here. */
  @Test
  void flatten_aProfile_agreesWithScikitImage() throws IOException {
    float[] flat = Ground.flatten(SciPyNumbers.profile(), new int[] {0, 120}, 9, false);
    double deviation = SciPyNumbers.deviation(flat, SciPyNumbers.readOfImages("opening"));

    assertThat(deviation).isLessThan(1e-6);
    OutsideCheck.of(
            "Ground by a flat opening and running means, 120 columns",
            "skimage.morphology.opening, scikit-image 0.19.3",
            "absolute 1e-6")
        .toTable(deviation);
  }

  @Test
  void flatten_outsideTheRange_isNothing() {
    float[] flat = Ground.flatten(SciPyNumbers.profile(), new int[] {20, 100}, 9, false);
    assertThat(flat[10]).isZero();
    assertThat(flat[60]).isPositive();
    assertThat(flat[110]).isZero();
  }

  @Test
  void flatten_laneAtTheEdge_standsOutWhenLanesMayBeWide() {
    float[] row = new float[120];
    java.util.Arrays.fill(row, 0, 30, 1);

    assertThat(Ground.flatten(row, new int[] {0, 120}, 20, true)[8]).isGreaterThan(0.9f);
    assertThat(Ground.flatten(row, new int[] {0, 120}, 20, false)[8]).isLessThan(0.5f);
  }
}
