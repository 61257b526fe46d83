package cistern.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import cistern.fact.Grounds;
import cistern.measurement.Interval;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Equality and open ends; source: the project's contract, classification on unrounded values. */
class LimitsTest {

  private static final Limits GREY = Limits.grey(Threshold.from(3.5), Threshold.from(6.1));

  @Nested
  class Judged {

    @ParameterizedTest
    @CsvSource({"3.4, WITHIN", "3.5, BORDERLINE", "6.09, BORDERLINE", "6.1, ABOVE"})
    void judge_anExactValue_byAGreyZone(double value, Verdict expected) {
      assertThat(GREY.judge(Interval.of(value))).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
      "0, 3.5, WITHIN",
      "0, 3.51, UNDETERMINED",
      "3.5, 6.1, BORDERLINE",
      "6.1, Infinity, ABOVE",
      "6, Infinity, UNDETERMINED"
    })
    void judge_openEnds_countAsTheSideTheyAreApproachedFrom(
        double lower, double upper, Verdict expected) {
      assertThat(GREY.judge(new Interval(lower, upper, true))).isEqualTo(expected);
    }

    @Test
    void judge_byAStrictLimit_isAboveOnlyBeyondIt() {
      Limits strict = Limits.upper(Threshold.over(5));

      assertThat(strict.judge(Interval.of(5))).isEqualTo(Verdict.WITHIN);
      assertThat(strict.judge(Interval.of(5.0001))).isEqualTo(Verdict.ABOVE);
      assertThat(strict.judge(new Interval(5, 9, true))).isEqualTo(Verdict.ABOVE);
      assertThat(strict.judge(new Interval(0, 5, true))).isEqualTo(Verdict.WITHIN);
    }

    @Test
    void judge_byALowerLimit_isBelowOnlyUnderIt() {
      Limits lower = Limits.lower(0.5);

      assertThat(lower.judge(Interval.of(0.5))).isEqualTo(Verdict.WITHIN);
      assertThat(lower.judge(Interval.of(0.499))).isEqualTo(Verdict.BELOW);
      assertThat(lower.judge(new Interval(0, 0.5, true))).isEqualTo(Verdict.BELOW);
      assertThat(lower.judge(new Interval(0.5, 2, true))).isEqualTo(Verdict.WITHIN);
    }

    @Test
    void judge_aQuotientThatIsExactlyTheLimit_forgivesTheMachinesRounding() {
      assertThat(2.8 / 7).isLessThan(0.4);
      assertThat(Limits.lower(0.4).judge(Interval.of(2.8 / 7))).isEqualTo(Verdict.WITHIN);
      assertThat(Limits.upper(Threshold.from(0.4)).judge(Interval.of(2.8 / 7)))
          .isEqualTo(Verdict.ABOVE);
      assertThat(Limits.upper(Threshold.over(0.3)).judge(Interval.of(0.1 + 0.2)))
          .isEqualTo(Verdict.WITHIN);
    }

    @Test
    void judge_withoutLimits_isUndetermined() {
      assertThat(Limits.NONE.judge(Interval.of(1))).isEqualTo(Verdict.UNDETERMINED);
      assertThat(Limits.NONE.isKnown()).isFalse();
    }
  }

  @Nested
  class InPrint {

    @ParameterizedTest
    @CsvSource({
      "ALBUMIN_QUOTIENT, 0.005238095, 5.24",
      "IGM_QUOTIENT, 0.000368, 0.368",
      "IGG_INDEX, 1.0760, 1.08",
      "IGG_INDEX, 0.345, 0.35",
      "IGG_FRACTION, 0.3475, 35 %",
      "IGG_SYNTHESIS_RATE, -3.4523, −3.5",
      "IGG_SYNTHESIS_RATE, -0.04, 0.0",
      "TOTAL_PROTEIN, 512.4, 512",
      "KAPPA_LOCAL, 4.2764, 4.28",
      "KAPPA_LOCAL, 0, 0",
      "LEUKOCYTES, 5, 5",
      "LEUKOCYTES, 6.6, 6.6"
    })
    void of_aValue_isRounded(FindingCode code, double value, String expected) {
      assertThat(Printed.of(code, value)).isEqualTo(expected);
    }

    @Test
    void besideLimit_thatLooksAlike_showsMoreDigits() {
      assertThat(Printed.besideLimit(FindingCode.IGG_INDEX, 0.7004, 0.7)).isEqualTo("0.7004");
      assertThat(Printed.besideLimit(FindingCode.IGG_INDEX, 0.7, 0.7)).isEqualTo("0.70");
      assertThat(Printed.besideLimit(FindingCode.ALBUMIN_QUOTIENT, 0.0060004, 0.006))
          .isEqualTo("6.0004");
      assertThat(Printed.besideLimit(FindingCode.IGG_FRACTION, 0.0004, 0)).isEqualTo("0.04 %");
      assertThat(Printed.besideLimit(FindingCode.IGG_INDEX, 0.7000000001, 0.7)).isEqualTo("0.70");
    }

    @Test
    void decimals_withoutEnd_areASign() {
      assertThat(Printed.decimals(Double.POSITIVE_INFINITY, 1)).isEqualTo("∞");
      assertThat(Printed.decimals(Double.NEGATIVE_INFINITY, 1)).isEqualTo("−∞");
      assertThat(Printed.significant(Double.POSITIVE_INFINITY)).isEqualTo("∞");
    }
  }

  @Nested
  class Whole {

    @Test
    void of_findings_needsEveryCodeOnce() {
      Finding one =
          Finding.withoutValue(FindingCode.LACTATE, Grounds.MEASURED, List.of(), "not measured");

      assertThatIllegalArgumentException().isThrownBy(() -> Findings.of(List.of(one)));
      assertThatIllegalArgumentException().isThrownBy(() -> Findings.of(List.of(one, one)));
    }

    @Test
    void parse_everyCode_findsIt() {
      for (FindingCode code : FindingCode.values()) {
        assertThat(FindingCode.parse(code.code())).contains(code);
      }
      assertThat(FindingCode.parse("no-such-code")).isEmpty();
    }
  }
}
