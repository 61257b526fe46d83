package cistern.gel.pairing;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.gel.bands.Band;
import cistern.gel.bands.SciPyNumbers;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class MatchingTest {
  private static final Alignment STILL = new Alignment(0, 0, 0, 1, 0);
  private static final double SPREAD = 2;
  private static final double TOP = 3.5;

  private static Band band(double y, double height) {
    return new Band(y, height, 3, 20, 1, 0, 1, 10, 0, 0.99);
  }

  private static List<Band> bands(SplittableRandom random, int n) {
    List<Band> bands = new ArrayList<>();
    double y = 0;
    for (int i = 0; i < n; i++) {
      y += 1 + 4 * random.nextDouble();
      bands.add(band(y, 0.1 + random.nextDouble()));
    }
    return bands;
  }

  private static double gain(Band c, Band s) {
    double d = (c.y() - s.y()) / SPREAD;
    double ratio = Math.log(s.height() / c.height());
    return TOP - 0.5 * d * d - 0.25 * ratio * ratio;
  }

  /** The best total over all ways to pair in order, tried one by one. */
  private static double best(List<Band> csf, List<Band> serum, int i, int j) {
    if (i == csf.size() || j == serum.size()) {
      return 0;
    }
    double without = Math.max(best(csf, serum, i + 1, j), best(csf, serum, i, j + 1));
    double gain = gain(csf.get(i), serum.get(j));
    return gain > 0 ? Math.max(without, gain + best(csf, serum, i + 1, j + 1)) : without;
  }

  @Nested
  class Laws {
    @Test
    void of_smallLanes_isTheBestOfAllWays() {
      SplittableRandom random = new SplittableRandom(7);
      for (int k = 0; k < 300; k++) {
        List<Band> csf = bands(random, random.nextInt(7));
        List<Band> serum = bands(random, random.nextInt(7));
        Matching matching = Matching.of(csf, serum, STILL, SPREAD, TOP);
        double total = 0;
        int last = -1;
        for (int i = 0; i < csf.size(); i++) {
          if (matching.isMatched(i)) {
            int j = matching.counterpart()[i];
            assertThat(j).as("counterparts keep their order").isGreaterThan(last);
            last = j;
            total += gain(csf.get(i), serum.get(j));
          }
        }
        assertThat(total)
            .isCloseTo(best(csf, serum, 0, 0), org.assertj.core.data.Offset.offset(1e-9));
      }
      OutsideCheck.of(
              "Counterparts in order, 300 small pairs of lanes",
              "every way to pair them, tried one by one",
              "absolute 1e-9")
          .toTable("300 of 300 have the best total");
    }

    @Test
    void of_aLaneWithItself_matchesEveryBand() {
      List<Band> lane = bands(new SplittableRandom(3), 9);
      Matching matching = Matching.of(lane, lane, STILL, SPREAD, TOP);
      assertThat(matching.counterpart()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8);
    }
  }

  @Nested
  class Published {
    /** Convolution of six chances by NumPy. */
    @Test
    void counts_ofSixBands_agreeWithNumPy() throws IOException {
      double[] expected = SciPyNumbers.read("counts");
      List<Double> got =
          CountDistribution.of(new double[] {0.9, 0.2, 0.55, 0.7, 0.05, 0.99}).chances();
      double most = 0;
      for (int k = 0; k < expected.length; k++) {
        most = Math.max(most, Math.abs(got.get(k) - expected[k]));
      }
      assertThat(got).hasSize(7);
      assertThat(most).isLessThan(1e-15);
      OutsideCheck.of("Distribution of the count, six bands", "numpy.convolve", "absolute 1e-15")
          .toTable("agrees");
    }
  }
}
