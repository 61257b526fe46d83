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

    /** Scott 2008 as in epiR: a 670, b 202, c 74, d 640; log-normal intervals. */
    @Test
    void likelihoodRatio_scott2008_agrees() {
      LikelihoodRatio ratio =
          new LikelihoodRatio(new Proportion(670, 744), new Proportion(202, 842));

      assertThat(ratio.positive()).isCloseTo(3.753726179, within(1e-8));
      assertThat(ratio.positiveInterval(LEVEL).lower()).isCloseTo(3.320688436, within(1e-8));
      assertThat(ratio.positiveInterval(LEVEL).upper()).isCloseTo(4.243234653, within(1e-8));
      assertThat(ratio.negative()).isCloseTo(.130855175, within(1e-8));
      assertThat(ratio.negativeInterval(LEVEL).lower()).isCloseTo(.105064324, within(1e-8));
      assertThat(ratio.negativeInterval(LEVEL).upper()).isCloseTo(.162977077, within(1e-8));
      OutsideCheck.of(
              "Likelihood ratios with log-normal intervals, 670/202/74/640",
              "Scott 2008; epiR 2.0.57 epi.tests",
              "absolute 1e-8")
          .toTable("6 of 6 agree");
    }

    /** Jarius 2017, PMID 28005176: 25.1 (16–39.3) and 0.38 (0.34–0.41). */
    @Test
    void likelihoodRatio_mrz_asPrinted() {
      LikelihoodRatio ratio =
          new LikelihoodRatio(new Proportion(458, 724), new Proportion(19, 754));

      assertThat(ratio.positive()).isCloseTo(25.1, within(0.05));
      assertThat(ratio.positiveInterval(LEVEL).lower()).isCloseTo(16, within(0.1));
      assertThat(ratio.positiveInterval(LEVEL).upper()).isCloseTo(39.3, within(0.1));
      assertThat(ratio.negative()).isCloseTo(0.38, within(0.005));
      OutsideCheck.of(
              "Likelihood ratio of the MRZ reaction with its interval",
              "Jarius 2017, PMID 28005176",
              "as printed")
          .toTable("25.1 (16–39.3) agrees");
    }

    /**
     * PIOPED 1990 likelihood ratios and printed post-test percentages at priors of 70 % and 20 %;
     * Eddy 1982; Casscells 1978.
     */
    @ParameterizedTest
    @CsvSource({
      "0.7,102/251,14/630,.977101",
      "0.7,105/251,217/630,.739164",
      "0.7,39/251,273/630,.455531",
      "0.7,5/251,126/630,.188578",
      "0.2,102/251,14/630,.820522",
      "0.2,105/251,217/630,.232908",
      "0.2,39/251,273/630,.0822669",
      "0.2,5/251,126/630,.0242943",
      "0.01,792/1000,96/1000,.0769230769",
      "0.001,100/100,5/100,.0196270854"
    })
    void probabilityAfter_postTestTables_agree(
        double prior, String with, String without, double printed) {
      double ratio = new LikelihoodRatio(proportion(with), proportion(without)).positive();

      assertThat(Odds.probabilityAfter(prior, Math.log(ratio))).isCloseTo(printed, within(2e-6));
      OutsideCheck.of(
              "Post-test probability at prior %s, %s against %s".formatted(prior, with, without),
              "PIOPED 1990, Eddy 1982, Casscells 1978",
              "absolute 2e-6")
          .toTable("agrees");
    }

    private Proportion proportion(String words) {
      int slash = words.indexOf('/');
      return new Proportion(
          Double.parseDouble(words.substring(0, slash)),
          Double.parseDouble(words.substring(slash + 1)));
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

    @Test
    void probabilityAfter_certain_stays() {
      assertThat(Odds.probabilityAfter(0, 5)).isZero();
      assertThat(Odds.probabilityAfter(1, -5)).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({"-1,10", "11,10", "0,0"})
    void of_outOfRange_refused(double x, double n) {
      assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(x, n));
    }
  }
}
