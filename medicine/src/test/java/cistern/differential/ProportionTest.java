package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProportionTest {

  private static final double LEVEL = 0.95;

  @Nested
  class Published {

    /** Newcombe 1998, Stat Med 17:857: the four cases, recomputed to nine digits in R. */
    @ParameterizedTest
    @CsvSource({
      "81,263,.255288520 .366209577 .252736746 .367621923",
      "15,148,.062386400 .160487242 .057844010 .161650490",
      "0,20,0 .161125158 0 .168433471",
      "1,29,.006113214 .171755219 .000872647 .177644295"
    })
    void intervals_fourCases_agree(double x, double n, String printed) {
      Proportion p = new Proportion(x, n);
      double[] expected =
          Stream.of(printed.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();

      assertThat(p.wilson(LEVEL).lower()).isCloseTo(expected[0], within(1e-8));
      assertThat(p.wilson(LEVEL).upper()).isCloseTo(expected[1], within(1e-8));
      assertThat(p.clopperPearson(LEVEL).lower()).isCloseTo(expected[2], within(1e-8));
      assertThat(p.clopperPearson(LEVEL).upper()).isCloseTo(expected[3], within(1e-8));
      OutsideCheck.of(
              "Wilson and Clopper–Pearson interval of %.0f of %.0f".formatted(x, n),
              "Newcombe 1998, Stat Med 17:857; nine digits from R",
              "absolute 1e-8")
          .toTable("agrees");
    }
  }

  @Nested
  class Laws {

    @Test
    void printed_noneOrAll_exact() {
      assertThat(new Proportion(0, 62).printed(LEVEL))
          .isEqualTo(new Proportion(0, 62).clopperPearson(LEVEL));
      assertThat(new Proportion(62, 62).printed(LEVEL).upper()).isEqualTo(1);
      assertThat(new Proportion(5, 14).printed(LEVEL))
          .isEqualTo(new Proportion(5, 14).wilson(LEVEL));
    }

    @ParameterizedTest
    @CsvSource({"-1,10", "11,10", "0,0"})
    void of_outOfRange_refused(double x, double n) {
      assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(x, n));
    }
  }
}
