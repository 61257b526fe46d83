package cistern.report.wording;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.report.InventedPuncture;
import org.junit.jupiter.api.Test;

class ValueWordsTest {

  private static final InventedPuncture PANEL_2 = InventedPuncture.withLocalSynthesis();

  @Test
  void value_point_isRoundedAsItsCodeWants() {
    Findings findings = PANEL_2.findings();
    assertThat(ValueWords.valueWithUnit(findings.get(FindingCode.IGG_QUOTIENT)))
        .isEqualTo("5.64 × 10⁻³");
    assertThat(ValueWords.valueWithUnit(findings.get(FindingCode.IGG_FRACTION))).isEqualTo("35 %");
    assertThat(ValueWords.valueWithUnit(findings.get(FindingCode.IGG_LOCAL)))
        .isEqualTo("21.5 mg/L");
  }

  @Test
  void value_thatLooksLikeItsLimit_getsMoreDigits() {
    Findings close = PANEL_2.with(Sample.csf(Analyte.LACTATE), Interval.of(2.704)).findings();
    assertThat(ValueWords.value(close.get(FindingCode.LACTATE))).isEqualTo("2.704");
  }

  @Test
  void value_cells_haveAMicroSign() {
    Findings cells = PANEL_2.with(Sample.csf(Analyte.LEUKOCYTES), Interval.of(9)).findings();
    assertThat(ValueWords.valueWithUnit(cells.get(FindingCode.LEUKOCYTES))).isEqualTo("9 /µL");
  }

  @Test
  void value_censored_isABoundAndNeverANumber() {
    assertThat(kappa(PANEL_2.withBelow(Analyte.KAPPA, 0.3))).isEqualTo("< 23.08");
    assertThat(kappa(PANEL_2.withAbove(Analyte.KAPPA, 4))).isEqualTo("> 307.69");
  }

  @Test
  void value_censoredButKnownToBeZero_isZero() {
    Findings below = PANEL_2.withBelow(Analyte.KAPPA, 0.1).findings();
    assertThat(ValueWords.value(below.get(FindingCode.KAPPA_FRACTION))).isEqualTo("0 %");
  }

  private static String kappa(InventedPuncture puncture) {
    return ValueWords.value(puncture.findings().get(FindingCode.KAPPA_QUOTIENT));
  }

  @Test
  void limit_everyKind_saysWhatIsWithin() {
    Findings findings =
        PANEL_2
            .with(Sample.csf(Analyte.LEUKOCYTES), Interval.of(9))
            .with(Analyte.GLUCOSE, 3, 5)
            .with(Analyte.LAMBDA, 1, 15)
            .findings();
    assertThat(ValueWords.limit(findings.get(FindingCode.ALBUMIN_QUOTIENT))).isEqualTo("≤ 6.33");
    assertThat(ValueWords.limit(findings.get(FindingCode.LEUKOCYTES))).isEqualTo("< 5");
    assertThat(ValueWords.limit(findings.get(FindingCode.GLUCOSE_RATIO))).isEqualTo("≥ 0.50");
    assertThat(ValueWords.limit(findings.get(FindingCode.IGG_QUOTIENT))).isEqualTo("1.49 to 3.68");
    assertThat(ValueWords.limit(findings.get(FindingCode.LAMBDA_INDEX))).isEqualTo("–");
  }

  @Test
  void greyZone_onlyWhereThereIsOne_isTold() {
    Findings findings = PANEL_2.findings();
    assertThat(ValueWords.greyZone(findings.get(FindingCode.KAPPA_INDEX))).contains("3.50 to 6.10");
    assertThat(ValueWords.greyZone(findings.get(FindingCode.ALBUMIN_QUOTIENT))).isEmpty();
  }

  @Test
  void interval_fraction_hasOnePerCentSign() {
    assertThat(ValueWords.interval(PANEL_2.findings(1.1).get(FindingCode.IGG_FRACTION)))
        .isEqualTo("32 to 38 %");
  }
}
