package cistern.gel.bands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import java.io.IOException;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class BandFilterTest {
  private static final BandFilter FILTER = BandFilter.of(2.25, 3);

  @Nested
  class Published {
    /** The numbers of SciPy; single precision here. */
    @Test
    void apply_aProfile_agreesWithSciPy() throws IOException {
      double deviation =
          SciPyNumbers.deviation(FILTER.apply(SciPyNumbers.profile()), SciPyNumbers.read("filter"));

      assertThat(deviation).isLessThan(1e-6);
      OutsideCheck.of(
              "Band filter along a profile of 120 rows",
              "scipy.ndimage.correlate1d, SciPy 1.17.1",
              "absolute 1e-6")
          .toTable(deviation);
    }

    /** The numbers of scikit-image; single precision here. */
    @Test
    void apply_aProfile_agreesWithScikitImage() throws IOException {
      double deviation =
          SciPyNumbers.deviation(
              FILTER.apply(SciPyNumbers.profile()), SciPyNumbers.readOfImages("filter"));

      assertThat(deviation).isLessThan(1e-6);
      OutsideCheck.of(
              "Band filter along a profile of 120 rows",
              "skimage.filters.correlate_sparse, scikit-image 0.19.3",
              "absolute 1e-6")
          .toTable(deviation);
    }
  }

  @Nested
  class Laws {
    @Test
    void apply_straightLine_isNothing() {
      float[] line = new float[100];
      for (int y = 0; y < line.length; y++) {
        line[y] = 0.5f + 0.01f * y;
      }
      assertThat(FILTER.apply(line)[50]).isCloseTo(0, within(1e-6f));
    }

    @Test
    void apply_bandOfItsOwn_answersItsHeight() {
      float[] band = new float[101];
      for (int y = 0; y < band.length; y++) {
        band[y] = (float) (0.7 * Math.exp(-0.5 * (y - 50) * (y - 50) / 9.0));
      }
      float[] answer = FILTER.apply(band);
      assertThat(answer[50]).isCloseTo(0.7f, within(1e-4f));
      // The formula of the answer beside the middle, against the answer itself.
      assertThat(answer[54]).isCloseTo((float) (0.7 * FILTER.answer(4, 1)), within(0.01f));
    }
  }
}
