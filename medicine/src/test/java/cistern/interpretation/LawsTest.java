package cistern.interpretation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Interval;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What holds for every panel; source for all: closed form of the published formulas. */
class LawsTest {

  private static final int PANELS = 200;

  private final Random draw = new Random(5_159_639);

  @Nested
  class Laws {

    @Test
    void index_whenOneFluidIsScaled_stays() {
      for (int i = 0; i < PANELS; i++) {
        double[] p = panel();
        double k = 0.8 + 0.4 * draw.nextDouble();
        double index = index(p[0], p[1], p[2], p[3]);
        assertThat(index(p[0] * k, p[1], p[2] * k, p[3])).isCloseTo(index, within(1e-12 * index));
        assertThat(index(p[0], p[1] * k, p[2], p[3] * k)).isCloseTo(index, within(1e-12 * index));
        assertThat(index(p[0] * k, p[1], p[2], p[3])).isCloseTo(index / k, within(1e-12 * index));
      }
    }

    @Test
    void fraction_withMoreIggOrLessAlbumin_neverFalls() {
      for (int i = 0; i < PANELS; i++) {
        double[] p = panel();
        double fraction = fraction(p);
        assertThat(fraction).isBetween(0.0, 1.0);
        assertThat(fraction(new double[] {p[0], p[1], p[2] * 1.1, p[3]}))
            .isGreaterThanOrEqualTo(fraction);
        assertThat(fraction(new double[] {p[0] * 1.1, p[1], p[2], p[3]}))
            .isLessThanOrEqualTo(fraction);
      }
    }

    @Test
    void local_always_isTheFractionOfTheCsfValue() {
      for (int i = 0; i < PANELS; i++) {
        double[] p = panel();
        Interpretation got = interpret(p);
        double local = Interpreted.value(got, FindingCode.IGG_LOCAL);
        double fraction = Interpreted.value(got, FindingCode.IGG_FRACTION);
        assertThat(local).isCloseTo(fraction * p[2], within(1e-9 * p[2]));
      }
    }

    @Test
    void rate_ofTwiceTheIgg_isTwiceTheRate() {
      for (int i = 0; i < PANELS; i++) {
        double[] p = panel();
        double rate = Interpreted.value(interpret(p), FindingCode.IGG_SYNTHESIS_RATE);
        double twice =
            Interpreted.value(
                interpret(new double[] {p[0], p[1], p[2] * 2, p[3] * 2}),
                FindingCode.IGG_SYNTHESIS_RATE);
        double otherAlbumin =
            Interpreted.value(
                interpret(new double[] {p[0] * 1.2, p[1] * 1.2, p[2], p[3]}),
                FindingCode.IGG_SYNTHESIS_RATE);
        assertThat(twice).isCloseTo(2 * rate, within(1e-9));
        assertThat(otherAlbumin).isCloseTo(rate, within(1e-9));
      }
    }

    @Test
    void bounds_ofACensoredValue_holdEveryValueBelowIt() {
      for (int i = 0; i < PANELS; i++) {
        double[] p = panel();
        Interpretation censored = interpret(p[0], p[1], "<" + p[2], p[3]);
        Interpretation below =
            interpret(p[0], p[1], "" + p[2] * (0.2 + 0.79 * draw.nextDouble()), p[3]);
        for (FindingCode code :
            new FindingCode[] {
              FindingCode.IGG_QUOTIENT,
              FindingCode.IGG_INDEX,
              FindingCode.IGG_FRACTION,
              FindingCode.IGG_LOCAL,
              FindingCode.IGG_SYNTHESIS_RATE
            }) {
          Interval bounds = censored.findings().get(code).value().orElseThrow();
          assertThat(Interpreted.value(below, code)).isBetween(bounds.lower(), bounds.upper());
          Verdict verdict = censored.findings().verdict(code);
          boolean isLikeInfusion =
              below.findings().verdict(FindingCode.IGG_QUOTIENT) == Verdict.BELOW;
          if (verdict.isDecided() && !isLikeInfusion) {
            assertThat(below.findings().verdict(code)).isEqualTo(verdict);
          }
        }
      }
    }

    @Test
    void interpretation_ofShuffledResults_isTheSame() {
      String forward = "albumin.csf=220 albumin.serum=42000 igg.csf=62 igg.serum=11000";
      String backward = "igg.serum=11000 igg.csf=62 albumin.serum=42000 albumin.csf=220";

      assertThat(Interpreted.of(35, forward).findings().all())
          .isEqualTo(Interpreted.of(35, backward).findings().all());
    }

    @Test
    void verdict_atTheLimit_isJudgedUnrounded() {
      // Index 0.7000…: QAlb 5e-3, QIgG 3.5e-3 exactly at 0.70 and a hair above it.
      assertThat(verdict("albumin.csf=200 albumin.serum=40000 igg.csf=35.01 igg.serum=10000"))
          .isEqualTo(Verdict.ABOVE);
      assertThat(verdict("albumin.csf=200 albumin.serum=40000 igg.csf=34.99 igg.serum=10000"))
          .isEqualTo(Verdict.BORDERLINE);
      assertThat(verdict("albumin.csf=200 albumin.serum=40000 igg.csf=29.9 igg.serum=10000"))
          .isEqualTo(Verdict.WITHIN);
    }

    private Verdict verdict(String results) {
      return Interpreted.of(40, results).findings().verdict(FindingCode.IGG_INDEX);
    }
  }

  private double[] panel() {
    return new double[] {
      100 + 700 * draw.nextDouble(),
      36_000 + 12_000 * draw.nextDouble(),
      15 + 120 * draw.nextDouble(),
      7_500 + 8_000 * draw.nextDouble()
    };
  }

  private static Interpretation interpret(double[] p) {
    return interpret(p[0], p[1], "" + p[2], p[3]);
  }

  private static Interpretation interpret(
      double csfAlbumin, double serumAlbumin, String csfIgg, double serumIgg) {
    return Interpreted.of(
        40,
        "albumin.csf=%s albumin.serum=%s igg.csf=%s igg.serum=%s"
            .formatted(csfAlbumin, serumAlbumin, csfIgg, serumIgg));
  }

  private static double index(double ac, double as, double gc, double gs) {
    return Interpreted.value(interpret(ac, as, "" + gc, gs), FindingCode.IGG_INDEX);
  }

  private static double fraction(double[] p) {
    return Interpreted.value(interpret(p), FindingCode.IGG_FRACTION);
  }
}
