package cistern.interpretation;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandReport;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.Status;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.PanelText;
import cistern.panel.Person;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rule of every code, at and around its limits; source: the project's contract. */
class VerdictsTest {

  private static final String SOUND =
      "albumin.csf=220 albumin.serum=42000 igg.csf=30 igg.serum=11000 ";

  @ParameterizedTest
  @CsvSource({
    "leukocytes, leukocytes.csf=4.9, WITHIN",
    "leukocytes, leukocytes.csf=5, ABOVE",
    "leukocytes, leukocytes.csf=<5, WITHIN",
    "leukocytes, leukocytes.csf=<5.1, UNDETERMINED",
    "leukocytes, leukocytes.csf=>5, ABOVE",
    "erythrocytes, erythrocytes.csf=500, WITHIN",
    "erythrocytes, erythrocytes.csf=500.5, ABOVE",
    "lactate, lactate.csf=2.7, WITHIN",
    "lactate, lactate.csf=2.71, ABOVE",
    "lactate, lactate.csf=<2.7, WITHIN",
    "lactate, lactate.csf=>2.7, ABOVE",
    "total-protein, total-protein.csf=490, WITHIN",
    "total-protein, total-protein.csf=490.1, ABOVE",
    "myelin-basic-protein, myelin-basic-protein.csf=3.9, WITHIN",
    "myelin-basic-protein, myelin-basic-protein.csf=4, BORDERLINE",
    "myelin-basic-protein, myelin-basic-protein.csf=8.9, BORDERLINE",
    "myelin-basic-protein, myelin-basic-protein.csf=9, ABOVE",
    "myelin-basic-protein, myelin-basic-protein.csf=<4, WITHIN",
    "glucose-ratio, glucose.csf=2.5 glucose.serum=5, WITHIN",
    "glucose-ratio, glucose.csf=2.49 glucose.serum=5, BELOW",
    "glucose-ratio, glucose.csf=2.8 glucose.serum=7, WITHIN",
    "glucose-ratio, glucose.csf=2.7 glucose.serum=7, BELOW",
    "glucose-ratio, glucose.csf=3 glucose.serum=10, WITHIN",
    "glucose-ratio, glucose.csf=2.9 glucose.serum=10, BELOW",
    "glucose-ratio, glucose.csf=<2 glucose.serum=5, BELOW",
    "kappa-index, albumin.csf=200 albumin.serum=40000 kappa-flc.csf=0.305 kappa-flc.serum=10,"
        + " ABOVE",
    "kappa-index, albumin.csf=200 albumin.serum=40000 kappa-flc.csf=0.3 kappa-flc.serum=10,"
        + " BORDERLINE",
    "kappa-index, albumin.csf=200 albumin.serum=40000 kappa-flc.csf=0.17 kappa-flc.serum=10,"
        + " WITHIN",
    "kappa-index, albumin.csf=200 albumin.serum=40000 kappa-flc.csf=<0.17 kappa-flc.serum=10,"
        + " WITHIN",
    "kappa-index, albumin.csf=200 albumin.serum=40000 kappa-flc.csf=<0.2 kappa-flc.serum=10,"
        + " UNDETERMINED",
    "igg-synthesis-rate, albumin.csf=180 albumin.serum=45000 igg.csf=29 igg.serum=9000, WITHIN",
    "igg-synthesis-rate, albumin.csf=900 albumin.serum=38000 igg.csf=140 igg.serum=12000, ABOVE",
    "igg-synthesis-rate, albumin.csf=600 albumin.serum=40000 igg.csf=50 igg.serum=12000, BELOW",
    "iga-index, albumin.csf=200 albumin.serum=40000 iga.csf=2 iga.serum=2000, UNDETERMINED",
    "lambda-quotient, lambda-flc.csf=1 lambda-flc.serum=12, UNDETERMINED"
  })
  void verdict_aroundItsLimit_isThatOfTheRule(String code, String results, Verdict expected) {
    assertThat(Interpreted.of(40, results).findings().verdict(code(code))).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "0.05, 9.0, WITHIN",
    "0.05, 7.0, BELOW",
    "0.0834, 14, WITHIN",
    "0.2, 4, WITHIN",
    "0.3, 5.1, ABOVE",
    "0.34, 3.6, ABOVE",
    "6.99, 0.4, BELOW",
    "6.99, 3.5, WITHIN",
    "7, 4.9, WITHIN",
    "15.9, 5.1, ABOVE",
    "16, 6.4, WITHIN",
    "17.99, 6.6, ABOVE",
    "18, 5.1, WITHIN",
    "18, 5.3, ABOVE"
  })
  void albuminQuotient_byAge_isJudgedByItsBand(double age, double q, Verdict expected) {
    Finding finding =
        Interpreted.of(age, "albumin.csf=%s albumin.serum=60000".formatted(q * 60))
            .findings()
            .get(FindingCode.ALBUMIN_QUOTIENT);

    assertThat(finding.verdict()).isEqualTo(expected);
    assertThat(finding.limitRule())
        .contains(age < 18 ? "childrens-table" : "four-plus-age-over-fifteen");
  }

  @Nested
  class Undetermined {

    @Test
    void findings_ofAnEmptyPanel_arePresentWithoutValueAndSayWhy() {
      Interpretation got = Interpreted.of(PanelText.parse(""));

      assertThat(got.findings().all()).hasSize(FindingCode.values().length);
      for (Finding finding : got.findings().all()) {
        assertThat(finding.verdict()).isEqualTo(Verdict.UNDETERMINED);
        assertThat(finding.hasValue()).isFalse();
        assertThat(finding.note()).isNotEmpty();
        assertThat(finding.grounds().sources()).isNotEmpty();
      }
    }

    @Test
    void albuminQuotient_withoutAge_hasAValueAndNoVerdict() {
      Finding finding =
          Interpreted.of(PanelText.parse(SOUND)).findings().get(FindingCode.ALBUMIN_QUOTIENT);

      assertThat(finding.hasValue()).isTrue();
      assertThat(finding.verdict()).isEqualTo(Verdict.UNDETERMINED);
      assertThat(finding.note()).contains("age");
    }

    @Test
    void findings_ofAnInvalidPair_keepTheirValuesWithoutVerdict() {
      Interpretation near = Interpreted.of(PanelText.of(Person.aged(35), SOUND, 1));
      Interpretation far = Interpreted.of(PanelText.of(Person.aged(35), SOUND, 200));

      for (Finding finding : far.findings().all()) {
        assertThat(finding.verdict()).isEqualTo(Verdict.UNDETERMINED);
        assertThat(finding.value()).isEqualTo(near.findings().get(finding.code()).value());
      }
    }

    @Test
    void findings_ofADoubtedValue_carryNoVerdict() {
      Interpretation got = Interpreted.of(35, SOUND.replace("42000", "42"));

      assertThat(got.findings().get(FindingCode.IGG_INDEX).hasValue()).isTrue();
      assertThat(got.findings().verdict(FindingCode.IGG_INDEX)).isEqualTo(Verdict.UNDETERMINED);
      assertThat(got.findings().verdict(FindingCode.ALBUMIN_QUOTIENT))
          .isEqualTo(Verdict.UNDETERMINED);
    }

    @Test
    void albuminQuotient_ofCisternalFluid_carriesNoVerdictAndTheIndexStands() {
      Panel panel = PanelText.parse(35, SOUND);
      Draw cisternal =
          new Draw(
              panel.csf().at(),
              Optional.empty(),
              Optional.empty(),
              Optional.of("cisternal"),
              panel.csf().volumeMl());
      Interpretation got = Interpreted.of(panel.withDraws(cisternal, panel.serum()));

      assertThat(got.findings().verdict(FindingCode.ALBUMIN_QUOTIENT))
          .isEqualTo(Verdict.UNDETERMINED);
      assertThat(got.findings().verdict(FindingCode.IGG_INDEX)).isEqualTo(Verdict.WITHIN);
    }

    @ParameterizedTest
    @CsvSource({
      "albumin.csf=220 albumin.serum=0, ALBUMIN_QUOTIENT",
      "albumin.csf=0 albumin.serum=42000 igg.csf=30 igg.serum=11000, IGG_INDEX"
    })
    void finding_dividedByZero_hasNoValue(String results, FindingCode code) {
      Finding finding = Interpreted.of(35, results).findings().get(code);

      assertThat(finding.hasValue()).isFalse();
      assertThat(finding.note()).contains("is zero");
    }

    @Test
    void antibodyIndex_ofASeronegativePerson_hasALowerBoundOnly() {
      Finding finding =
          Interpreted.of(35, SOUND + "measles-igg.csf=20 measles-igg.serum=<10")
              .findings()
              .get(FindingCode.MEASLES_ANTIBODY_INDEX);

      assertThat(finding.verdict()).isEqualTo(Verdict.UNDETERMINED);
      assertThat(finding.value().orElseThrow().upper()).isInfinite();
    }
  }

  @Nested
  class Mrz {

    @ParameterizedTest
    @CsvSource({
      "20, 20, 20, 3, ABOVE",
      "20, 20, 3, 2, ABOVE",
      "20, 3, 3, 1, WITHIN",
      "20, 20, -, 2, ABOVE",
      "20, 3, -, 1, UNDETERMINED",
      "3, 3, -, 0, UNDETERMINED"
    })
    void reaction_byIndicesAbove_isCounted(
        String measles, String rubella, String zoster, double count, Verdict expected) {
      String results =
          SOUND
              + pair("measles-igg", measles)
              + pair("rubella-igg", rubella)
              + pair("varicella-zoster-igg", zoster);
      Finding finding = Interpreted.of(35, results).findings().get(FindingCode.MRZ_REACTION);

      assertThat(Interpreted.value(finding)).isEqualTo(count);
      assertThat(finding.verdict()).isEqualTo(expected);
    }

    private String pair(String analyte, String csf) {
      return csf.equals("-") ? "" : "%s.csf=%s %s.serum=1000 ".formatted(analyte, csf, analyte);
    }
  }

  @Nested
  class Blood {

    @Test
    void correction_withBloodCounts_usesThePersonsOwnBlood() {
      Interpretation got =
          Interpreted.of(
              40,
              "leukocytes.csf=21 leukocytes.blood=7200 erythrocytes.csf=10000"
                  + " erythrocytes.blood=5000000");

      // 21 − 10000 · 7200/5000000 = 6.6, arithmetic.
      assertThat(Interpreted.value(got, FindingCode.LEUKOCYTES_CORRECTED)).isEqualTo(6.6);
      assertThat(got.findings().verdict(FindingCode.LEUKOCYTES_CORRECTED)).isEqualTo(Verdict.ABOVE);
    }

    @Test
    void correction_withoutBloodCounts_isARuleOfThumb() {
      Interpretation got =
          Interpreted.of(40, "leukocytes.csf=9 erythrocytes.csf=20000 total-protein.csf=650");

      assertThat(Interpreted.value(got, FindingCode.LEUKOCYTES_CORRECTED)).isZero();
      assertThat(Interpreted.value(got, FindingCode.TOTAL_PROTEIN_CORRECTED)).isEqualTo(450);
      assertThat(got.findings().get(FindingCode.TOTAL_PROTEIN_CORRECTED).grounds().status())
          .isEqualTo(Status.MEMORY);
      assertThat(got.findings().get(FindingCode.IGG_CORRECTED).hasValue()).isFalse();
    }

    @Test
    void correction_thatTakesAwayTooMuch_hasNoValue() {
      Finding finding =
          Interpreted.of(
                  40,
                  "albumin.csf=50 albumin.serum=42000 erythrocytes.csf=100000"
                      + " erythrocytes.blood=5000000 hematocrit.blood=0.4")
              .findings()
              .get(FindingCode.ALBUMIN_CORRECTED);

      assertThat(finding.hasValue()).isFalse();
      assertThat(finding.note()).contains("more than was measured");
    }

    @ParameterizedTest
    @CsvSource({"4999, WITHIN", "5000, UNDETERMINED", "<5000, WITHIN", "<5001, UNDETERMINED"})
    void immunoglobulins_withoutBloodCounts_loseTheirVerdictAtTheLimit(
        String cells, Verdict expected) {
      Interpretation got = Interpreted.of(40, SOUND + "erythrocytes.csf=" + cells);

      assertThat(got.findings().verdict(FindingCode.IGG_QUOTIENT)).isEqualTo(expected);
      assertThat(got.findings().verdict(FindingCode.IGG_LOCAL)).isEqualTo(expected);
      assertThat(got.findings().verdict(FindingCode.IGG_INDEX)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"8000, WITHIN", "9000, UNDETERMINED"})
    void immunoglobulins_withBloodCounts_areJudgedByThePlasma(int cells, Verdict expected) {
      // p = cells/5e6 · 0.6: 0.00096 and 0.00108 around 0.001.
      Interpretation got =
          Interpreted.of(
              40,
              SOUND
                  + "erythrocytes.csf=%d erythrocytes.blood=5000000 hematocrit.blood=0.4"
                      .formatted(cells));

      assertThat(got.findings().verdict(FindingCode.IGG_FRACTION)).isEqualTo(expected);
    }
  }

  @Nested
  class UnderQlow {

    private static final String HOOK =
        "albumin.csf=220 albumin.serum=42000 igg.csf=8 igg.serum=11000 ";

    @Test
    void quotient_underQlow_isBelowAndAntigenExcess() {
      Interpretation got = Interpreted.of(35, HOOK);

      assertThat(got.findings().verdict(FindingCode.IGG_QUOTIENT)).isEqualTo(Verdict.BELOW);
      assertThat(Interpreted.value(got, FindingCode.IGG_FRACTION)).isZero();
      assertThat(Interpreted.value(got, FindingCode.IGG_LOCAL)).isZero();
      assertThat(Interpreted.problems(got)).containsExactly("antigen-excess-suspected");
    }

    @Test
    void quotient_underQlowAfterInfusion_isExplained() {
      Panel panel =
          PanelText.parse(35, HOOK)
              .withCircumstances(Map.of(Circumstance.IMMUNOGLOBULIN_INFUSION, Answer.YES));

      assertThat(Interpreted.problems(Interpreted.of(panel)))
          .containsExactly("recent-immunoglobulin");
    }
  }

  @Nested
  class UnderPolicy {

    @Test
    void albuminQuotient_underTheOtherRule_isJudgedByIt() {
      Interpretation got =
          under("albumin-quotient.limit-rule", "eight-plus-age-over-twenty-five", 35, SOUND);
      Finding finding = got.findings().get(FindingCode.ALBUMIN_QUOTIENT);

      assertThat(finding.limitRule()).contains("eight-plus-age-over-twenty-five");
      assertThat(finding.limits().above().orElseThrow().at()).isEqualTo(9.4e-3);
      assertThat(got.policy()).contains("our clinic");
    }

    @Test
    void albuminQuotient_beyondTheFittedAges_isMarkedExtrapolated() {
      Interpretation got =
          under("albumin-quotient.limit-rule", "eight-plus-age-over-twenty-five", 82, SOUND);

      assertThat(got.findings().get(FindingCode.ALBUMIN_QUOTIENT).note()).contains("age");
    }

    @Test
    void index_underALocalLimit_isJudgedByItAndSaysSo() {
      Interpretation got = under("igg-index.upper", "0.5", 35, SOUND);
      Finding finding = got.findings().get(FindingCode.IGG_INDEX);

      assertThat(finding.verdict()).isEqualTo(Verdict.ABOVE);
      assertThat(finding.grounds().status()).isEqualTo(Status.LOCAL);
      assertThat(finding.grounds().sources()).contains("protocol 7");
    }

    @ParameterizedTest
    @CsvSource({
      "5, 311, ABOVE",
      "15, 399, WITHIN",
      "30, 491, ABOVE",
      "65, 780, WITHIN",
      "80, 300, UNDETERMINED"
    })
    void totalProtein_byAge_isJudgedByItsBand(double age, double protein, Verdict expected) {
      Interpretation got =
          under("total-protein.limit-rule", "by-age", age, "total-protein.csf=" + protein);

      assertThat(got.findings().verdict(FindingCode.TOTAL_PROTEIN)).isEqualTo(expected);
    }

    private Interpretation under(String key, String value, double age, String results) {
      Policy policy =
          new Policy(
              "our clinic", Map.of(key, new Policy.Change(FactValue.parse(value), "protocol 7")));
      return Interpreter.of(Facts.standard().with(policy))
          .interpret(
              new Workup(
                  "test", PanelText.parse(age, results), new BandReport.NotReported(), List.of()));
    }
  }

  private static FindingCode code(String code) {
    return Arrays.stream(FindingCode.values())
        .filter(c -> c.code().equals(code))
        .findFirst()
        .orElseThrow();
  }
}
