package cistern.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.hipparchus.stat.descriptive.StreamingStatistics;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MomentsTest {

  private static Moments of(Iterable<Double> values) {
    Moments moments = Moments.NONE;
    for (double value : values) {
      moments = moments.with(value);
    }
    return moments;
  }

  /** The data of a file of certified values: the numbers under its last line of text. */
  private static List<Double> certified(String name) throws IOException {
    String path = "/org/hipparchus/stat/data/" + name + ".txt";
    List<Double> values = new ArrayList<>();
    try (InputStream in = StreamingStatistics.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IOException("no data set " + name);
      }
      for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
        if (line.matches("\\s*[-+]?[0-9.]+([Ee][-+]?[0-9]+)?\\s*")) {
          values.add(Double.parseDouble(line.strip()));
        } else {
          values.clear();
        }
      }
    }
    return values;
  }

  /** Source: NIST Statistical Reference Datasets, univariate summary statistics. */
  @Nested
  class Published {

    @ParameterizedTest
    @CsvSource({
      "PiDigits, 5000, 4.53480000000000, 2.86733906028871, 1e-13",
      "Lottery, 218, 518.958715596330, 291.699727470969, 1e-13",
      "Lew, 200, -177.435000000000, 277.332168044316, 1e-13",
      "Mavro, 50, 2.00185600000000, 0.000429123454003053, 1e-12",
      "Michelso, 100, 299.852400000000, 0.0790105478190518, 1e-12",
      "NumAcc1, 3, 10000002, 1, 1e-13",
      "NumAcc2, 1001, 1.2, 0.1, 1e-13",
      "NumAcc3, 1001, 1000000.2, 0.1, 1e-9",
      "NumAcc4, 1001, 10000000.2, 0.1, 1e-8"
    })
    void meanAndStandardDeviation_ofCertifiedData_areThePrintedOnes(
        String name, int count, double mean, double deviation, double tolerance)
        throws IOException {
      List<Double> values = certified(name);
      Moments moments = of(values);

      assertThat(moments.count()).isEqualTo(count);
      assertThat(moments.mean()).isCloseTo(mean, within(1e-13 * Math.abs(mean)));
      assertThat(moments.standardDeviation()).isCloseTo(deviation, within(tolerance * deviation));
      OutsideCheck.of(
              "Mean and standard deviation of a cohort: " + name,
              "NIST Statistical Reference Datasets, certified values",
              "relative 1e-13, spread " + tolerance)
          .toTable("agrees");
    }
  }

  @Nested
  class Laws {

    @Test
    void merge_anyOrderAndGrouping_changesLessThanOnePartIn10To12() {
      Random random = new Random(5);
      List<Double> values = new ArrayList<>();
      for (int i = 0; i < 20_000; i++) {
        values.add(1e4 * Math.exp(3 * random.nextGaussian()));
      }
      Moments whole = of(values);
      for (int parts = 2; parts < 40; parts += 7) {
        Collections.shuffle(values, random);
        Moments merged = Moments.NONE;
        int size = values.size() / parts;
        for (int from = 0; from < values.size(); from += size) {
          merged = of(values.subList(from, Math.min(values.size(), from + size))).merge(merged);
        }
        assertThat(merged.count()).isEqualTo(whole.count());
        assertThat(merged.mean()).isCloseTo(whole.mean(), within(1e-12 * whole.mean()));
        assertThat(merged.standardDeviation())
            .isCloseTo(whole.standardDeviation(), within(1e-12 * whole.standardDeviation()));
      }
    }

    @Test
    void mean_ofNothing_isRefused() {
      assertThatThrownBy(Moments.NONE::mean).isInstanceOf(IllegalStateException.class);
      assertThatThrownBy(Moments.NONE.with(1)::standardDeviation)
          .isInstanceOf(IllegalStateException.class);
      assertThatThrownBy(() -> Moments.NONE.with(Double.NaN))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
