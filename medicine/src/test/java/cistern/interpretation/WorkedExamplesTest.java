package cistern.interpretation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.barrier.QuotientLimits;
import cistern.checks.OutsideCheck;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Published examples at their printed accuracy, and the project's own synthetic panels. */
class WorkedExamplesTest {

  @Nested
  class Published {

    /** Serum IgG g/L, CSF IgG mg/L; printed index, QIgG × 10³, IgG_loc mg/L, fraction %. */
    private static final double[][] BONNAN = {
      {10, 23, 0.5, 2.3, 0, 0},
      {10, 24, 0.5, 2.4, 0, 0},
      {10, 28, 0.6, 2.8, 0, 0},
      {10, 48, 1.0, 4.8, 13.2, 27.5},
      {10, 73, 1.5, 7.3, 38.2, 52.4},
      {8, 18.4, 0.5, 2.3, 0, 0},
      {8, 19.4, 0.5, 2.4, 0, 0},
      {8, 23.4, 0.6, 2.9, 0, 0},
      {8, 43.4, 1.1, 5.4, 15.5, 35.9},
      {8, 68.4, 1.7, 8.6, 40.5, 59.3},
      {5, 11.5, 0.5, 2.3, 0, 0},
      {5, 12.5, 0.5, 2.5, 0, 0},
      {5, 16.5, 0.7, 3.3, 0, 0},
      {5, 36.5, 1.5, 7.3, 19.1, 52.4},
      {5, 61.5, 2.5, 12.3, 44.1, 71.7},
      {1, 2.3, 0.5, 2.3, 0, 0},
      {1, 3.3, 0.7, 3.3, 0, 0},
      {1, 7.3, 1.5, 7.3, 3.8, 52.4},
      {1, 27.3, 5.5, 27.3, 23.8, 87.3},
      {1, 52.3, 10.5, 52.3, 48.8, 93.3}
    };

    /** Bonnan 2018, PMC5945966, table 1; QAlb 5.0e-3. IgG_loc is printed truncated. */
    @Test
    void interpret_simulationOfBonnan_isReproduced() {
      for (double[] row : BONNAN) {
        Interpretation got =
            Interpreted.of(
                40,
                "albumin.csf=200 albumin.serum=40000 igg.csf=%s igg.serum=%s"
                    .formatted(row[1], row[0] * 1000));
        assertThat(Interpreted.value(got, FindingCode.IGG_INDEX)).isCloseTo(row[2], within(0.051));
        assertThat(Interpreted.value(got, FindingCode.IGG_QUOTIENT) * 1e3)
            .isCloseTo(row[3], within(0.0501));
        assertThat(Interpreted.value(got, FindingCode.IGG_LOCAL)).isCloseTo(row[4], within(0.1));
        assertThat(Interpreted.value(got, FindingCode.IGG_FRACTION) * 100)
            .isCloseTo(row[5], within(0.1));
      }
      OutsideCheck.of(
              "IgG index, quotient, local amount and fraction of 20 simulated panels",
              "Bonnan 2018, PMC5945966, table 1",
              "printed digits: 0.05, 0.05, 0.1 mg/L (truncated there), 0.1 point")
          .toTable("20 of 20 agree");
    }

    /** Djukic 2022, doi 10.1186/s12974-022-02538-3, figure 3: contaminated concentrations. */
    @Test
    void interpret_contaminationOfDjukic_isCalledAndCorrected() {
      String serum = "albumin.serum=40000 igg.serum=10000 iga.serum=2000 igm.serum=2000 ";
      Interpretation clean =
          Interpreted.of(40, serum + "albumin.csf=200 igg.csf=20 iga.csf=2 igm.csf=1");
      Interpretation slight =
          Interpreted.of(40, serum + "albumin.csf=240 igg.csf=30 iga.csf=4 igm.csf=3");
      String blood = " erythrocytes.csf=50000 erythrocytes.blood=4000000 hematocrit.blood=0.2";
      Interpretation bloody =
          Interpreted.of(40, serum + "albumin.csf=600 igg.csf=120 iga.csf=22 igm.csf=21");
      Interpretation counted =
          Interpreted.of(40, serum + "albumin.csf=600 igg.csf=120 iga.csf=22 igm.csf=21" + blood);

      assertCalls(clean, Verdict.WITHIN, Verdict.WITHIN, Verdict.WITHIN);
      assertCalls(slight, Verdict.WITHIN, Verdict.WITHIN, Verdict.ABOVE);
      assertCalls(bloody, Verdict.WITHIN, Verdict.ABOVE, Verdict.ABOVE);
      assertCalls(counted, Verdict.UNDETERMINED, Verdict.UNDETERMINED, Verdict.UNDETERMINED);
      // p = 50000/4000000 · (1 − 0.2) = 1 %: the clean concentrations come back exactly.
      assertThat(Interpreted.value(counted, FindingCode.IGG_CORRECTED)).isCloseTo(20, within(1e-9));
      assertThat(Interpreted.value(counted, FindingCode.IGA_CORRECTED)).isCloseTo(2, within(1e-9));
      assertThat(Interpreted.value(counted, FindingCode.IGM_CORRECTED)).isCloseTo(1, within(1e-9));
      assertThat(Interpreted.value(counted, FindingCode.ALBUMIN_CORRECTED))
          .isCloseTo(200, within(1e-9));
      OutsideCheck.of(
              "In and out calls of IgG, IgA, IgM at 0, 0.1 and 1 % blood, and the inverse",
              "Djukic 2022, doi 10.1186/s12974-022-02538-3, figure 3",
              "calls equal, corrected concentrations 1e-9")
          .toTable("9 of 9 calls and 4 of 4 concentrations agree");
    }

    private void assertCalls(Interpretation got, Verdict igg, Verdict iga, Verdict igm) {
      assertThat(got.findings().verdict(FindingCode.IGG_QUOTIENT)).isEqualTo(igg);
      assertThat(got.findings().verdict(FindingCode.IGA_QUOTIENT)).isEqualTo(iga);
      assertThat(got.findings().verdict(FindingCode.IGM_QUOTIENT)).isEqualTo(igm);
    }

    /** Bonnan 2018, PMC5945966, introduction: albumin 1:205 goes with IgG 1:440. */
    @Test
    void mean_atTheNormalAlbuminRatio_givesTheNormalIggRatio() {
      double mean =
          QuotientLimits.of(Interpreted.FACTS, Analyte.IGG).mean().orElseThrow().at(1 / 205.0);

      assertThat(1 / mean).isCloseTo(440, within(2.0));
      OutsideCheck.of(
              "Qmean of IgG at the normal serum:CSF ratio of albumin",
              "Bonnan 2018, PMC5945966, introduction, 1:205 and 1:440",
              "0.5 % of the ratio")
          .toTable("1:441, agrees");
    }

    /** Bonnan 2018, PMC5945966, introduction prints 1:900 for IgM; Blennow 1996 contradicts it. */
    @Test
    void limit_ofIgm_liesUnderTheRatioThatIsNotToBeUsed() {
      QuotientLimits igm = QuotientLimits.of(Interpreted.FACTS, Analyte.IGM);

      assertThat(1 / igm.upper().at(1 / 205.0)).isGreaterThan(900);
      assertThat(igm.mean().orElseThrow().at(1 / 205.0)).isLessThan(0.40e-3);
      OutsideCheck.of(
              "Qmean of IgM under the healthy 95th percentile 0.40e-3",
              "Blennow 1996, PMID 8814421; against it 1:900 of Bonnan 2018",
              "inequality")
          .toTable("agrees with Blennow, not with Bonnan");
    }

    /** J Neuroinflammation 2021, doi 10.1186/s12974-021-02339-0, table 3, QAlb inverted from it. */
    @Test
    void interpret_covidSample_givesThePrintedFraction() {
      Interpretation got =
          Interpreted.of(40, "albumin.csf=298 albumin.serum=40000 igg.csf=82.5 igg.serum=10000");

      assertThat(Interpreted.value(got, FindingCode.IGG_FRACTION)).isCloseTo(0.322, within(5e-4));
      OutsideCheck.of(
              "IgG fraction of one sample, QIgG 8.25e-3, QAlb inverted to 7.45e-3 (weak)",
              "doi 10.1186/s12974-021-02339-0, table 3",
              "0.05 point")
          .toTable("agrees");
    }

    /** PMC8005645, table 5: participant 1's IgG(loc) 1.6 at index 0.69 needs the 1987 constants. */
    @Test
    void limit_of1994_isNotThatOf1987() {
      double older = 0.8 * Math.sqrt(25e-6 + 15e-6) - 1.8e-3;
      double ours = QuotientLimits.of(Interpreted.FACTS, Analyte.IGG).upper().at(5e-3);

      assertThat(older * 1e3).isCloseTo(3.260, within(5e-4));
      assertThat(ours * 1e3).isCloseTo(3.478, within(5e-4));
      OutsideCheck.of(
              "The 1994 limit differs from the 1987 one that a trial table used",
              "PMC8005645, table 5; 1987 and 1994 constants at QAlb 5e-3",
              "printed digits")
          .toTable("3.478 here, 3.260 there");
    }

    /** Printed limits of the albumin quotient × 10³ by age. */
    @Test
    void limit_ofTheAlbuminQuotient_isThePrintedOne() {
      assertThat(limit(60)).isCloseTo(8.0, within(5e-3));
      assertThat(limit(45)).isCloseTo(7.0, within(5e-3));
      assertThat(limit(75)).isCloseTo(9.0, within(5e-3));
      assertThat(limit(40)).isCloseTo(6.5, within(0.17));
      assertThat(limit(15)).isEqualTo(5.0);
      assertThat(older(18)).isCloseTo(8.7, within(0.021));
      assertThat(older(70)).isCloseTo(10.8, within(5e-3));
      OutsideCheck.of(
              "Age limits of the albumin quotient under both adult rules and for a child",
              "Tumani 2020 figure 2; Hegen 2016; a reference laboratory's handbook",
              "printed digits; the handbook rounds 6.67 down to 6.5")
          .toTable("7 of 7 agree");
    }

    private double limit(double age) {
      return Interpreted.of(age, "albumin.csf=200 albumin.serum=40000")
              .findings()
              .get(FindingCode.ALBUMIN_QUOTIENT)
              .limits()
              .above()
              .orElseThrow()
              .at()
          * 1e3;
    }

    private double older(double age) {
      return (Interpreted.FACTS.number("albumin-quotient.eight-plus-age-over-twenty-five.base")
          + age
              / Interpreted.FACTS.number("albumin-quotient.eight-plus-age-over-twenty-five.years"));
    }

    /** From the published formula: the anchor of checks that kills a version without 0.43. */
    @Test
    void rate_ofTheAnchor_isThatOfTheFormula() {
      Interpretation got =
          Interpreted.of(40, "albumin.csf=200 albumin.serum=40000 igg.csf=50 igg.serum=10000");
      Interpretation zero =
          Interpreted.of(
              40,
              "albumin.csf=%s albumin.serum=40000 igg.csf=%s igg.serum=10000"
                  .formatted(40000 / 230.0, 10000 / 369.0));

      assertThat(Interpreted.value(got, FindingCode.IGG_SYNTHESIS_RATE))
          .isCloseTo(10.04769059, within(5e-9));
      assertThat(Interpreted.value(zero, FindingCode.IGG_SYNTHESIS_RATE))
          .isCloseTo(0, within(1e-9));
      OutsideCheck.of(
              "IgG synthesis rate at an anchor and at its zero point",
              "Tourtellotte's formula, closed form, mg/dL",
              "5e-9 mg/d")
          .toTable("agrees");
    }
  }

  @Nested
  class Pinned {

    /**
     * The project's own synthetic panels, not published: age, albumin, IgG and κ in CSF and serum;
     * index, IgG_loc, IF %, rate, κ index, κ_loc, κ IF %, printed to three decimals.
     */
    private static final double[][] PANELS = {
      {30, 200, 40000, 23, 10000, 0.15, 12, 0.460, 0, 0, -3.452, 2.500, 0, 0},
      {35, 220, 42000, 62, 11000, 4.5, 13, 1.076, 21.545, 34.750, 13.989, 66.084, 4.276, 95.025},
      {60, 420, 40000, 40, 9500, 0.45, 18, 0.401, 0, 0, -5.438, 2.381, 0, 0},
      {28, 180, 45000, 29, 9000, 0.9, 9, 0.806, 5.041, 17.384, 2.978, 25.000, 0.768, 85.310},
      {45, 900, 38000, 140, 12000, 2.0, 15, 0.493, 0, 0, 3.852, 5.630, 0.928, 46.380}
    };

    private static final FindingCode[] CODES = {
      FindingCode.IGG_INDEX,
      FindingCode.IGG_LOCAL,
      FindingCode.IGG_FRACTION,
      FindingCode.IGG_SYNTHESIS_RATE,
      FindingCode.KAPPA_INDEX,
      FindingCode.KAPPA_LOCAL,
      FindingCode.KAPPA_FRACTION
    };

    @Test
    void interpret_syntheticPanels_givesTheTable() {
      for (double[] row : PANELS) {
        Interpretation got =
            Interpreted.of(
                row[0],
                "albumin.csf=%s albumin.serum=%s igg.csf=%s igg.serum=%s kappa-flc.csf=%s kappa-flc.serum=%s"
                    .formatted(row[1], row[2], row[3], row[4], row[5], row[6]));
        for (int i = 0; i < CODES.length; i++) {
          double scale = CODES[i].print() == FindingCode.Print.FRACTION ? 100 : 1;
          assertThat(Interpreted.value(got, CODES[i]) * scale)
              .as("%s of %s", CODES[i], row[0])
              .isCloseTo(row[7 + i], within(5.1e-4));
        }
      }
    }
  }
}
