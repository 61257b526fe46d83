package cistern.panel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CheckedPanelTest {

  private static final String SOUND =
      "albumin.csf=220 albumin.serum=42000 igg.csf=30 igg.serum=11000 ";

  @Nested
  class DrawInterval {

    /** Contract of the project: valid up to 24 h, doubtful up to 168 h, both included, absolute. */
    @ParameterizedTest
    @CsvSource({
      "0, VALID",
      "24, VALID",
      "-24, VALID",
      "24.001, DOUBTFUL",
      "168, DOUBTFUL",
      "-168, DOUBTFUL",
      "168.01, INVALID",
      "-400, INVALID"
    })
    void pairing_byHours_isJudgedAtBothEnds(double hours, Pairing.Verdict expected) {
      CheckedPanel checked = check(PanelText.of(Person.aged(30), SOUND, hours));

      assertThat(checked.pairing().verdict()).isEqualTo(expected);
      assertThat(checked.pairing().hoursApart().orElseThrow()).isEqualTo(hours);
      assertThat(codes(checked).contains("draws-far-apart"))
          .isEqualTo(expected != Pairing.Verdict.VALID);
    }

    @Test
    void pairing_withoutATime_isUnknownAndNothingWorse() {
      Panel panel = PanelText.parse(30, SOUND).withDraws(Draw.at(PanelText.DRAWN), Draw.UNKNOWN);

      assertThat(check(panel).pairing().verdict()).isEqualTo(Pairing.Verdict.UNKNOWN);
      assertThat(check(panel).pairing().hoursApart()).isEmpty();
      assertThat(codes(check(panel))).isEmpty();
    }
  }

  @Nested
  class Suspicion {

    @Test
    void check_exchangedValues_areNamedSwappedAndNothingElse() {
      CheckedPanel checked =
          PanelText.checked(30, "albumin.csf=42000 albumin.serum=220 igg.csf=30 igg.serum=11000");

      assertThat(codes(checked)).containsExactly("compartments-swapped");
      assertThat(checked.suspected())
          .containsExactlyInAnyOrder(Sample.csf(Analyte.ALBUMIN), Sample.serum(Analyte.ALBUMIN));
      assertThat(checked.problems().getFirst().place()).isEqualTo("albumin.csf");
    }

    @ParameterizedTest
    @CsvSource({
      "albumin.csf=220 albumin.serum=42, 1000 times larger, albumin.serum",
      "albumin.csf=2.2 albumin.serum=42000, 100 times larger, albumin.csf",
      "igg.csf=30000 igg.serum=11000, 100 times smaller, igg.csf",
      "igm.serum=900000, 1000 times smaller, igm.serum"
    })
    void check_aSlippedUnit_isSuggestedAndNotApplied(String results, String text, String place) {
      CheckedPanel checked = PanelText.checked(30, results);
      Problem slip =
          checked.problems().stream()
              .filter(p -> p.code().equals("unit-slip-suspected"))
              .findFirst()
              .orElseThrow();

      assertThat(slip.text()).contains(text).contains("Nothing was changed");
      assertThat(slip.place()).isEqualTo(place);
      assertThat(slip.grounds().sources()).isNotEmpty();
      assertThat(checked.panel()).isEqualTo(PanelText.parse(30, results));
    }

    @Test
    void check_aValueNoSlipExplains_isImplausible() {
      CheckedPanel checked =
          PanelText.checked(
              30, "albumin.csf=220 albumin.serum=99000000 igg.csf=30 igg.serum=11000");

      assertThat(codes(checked)).containsExactly("implausible-value");
      assertThat(checked.suspected()).containsExactly(Sample.serum(Analyte.ALBUMIN));
    }

    /** Project rule: ends of the plausible range are included. */
    @ParameterizedTest
    @CsvSource({
      "albumin.csf=20, albumin.serum=10000",
      "albumin.csf=7000, albumin.serum=70000",
      "igg.csf=1, igg.serum=1000",
      "iga.csf=500, iga.serum=40000",
      "igm.csf=0.01, igm.serum=50",
    })
    void check_theEndsOfTheRange_arePlausible(String csf, String serum) {
      assertThat(PanelText.checked(30, csf + " " + serum).suspected()).isEmpty();
    }

    @Test
    void check_aCensoredValue_isImplausibleOnlyWhenAllOfItIs() {
      assertThat(PanelText.checked(30, "igm.csf=<0.2 igm.serum=1200").suspected()).isEmpty();
      assertThat(codes(PanelText.checked(30, "igg.csf=>9000 igg.serum=11000"))).isNotEmpty();
    }

    @Test
    void check_moreKappaInCsfThanInSerum_onlyWarns() {
      CheckedPanel checked = PanelText.checked(30, "kappa-flc.csf=20 kappa-flc.serum=12");

      assertThat(codes(checked)).containsExactly("compartments-swapped");
      assertThat(checked.problems().getFirst().text()).contains("possible");
      assertThat(checked.suspected()).isEmpty();
    }
  }

  @Nested
  class Counterparts {

    @ParameterizedTest
    @CsvSource({
      "igg.csf=30, serum-missing",
      "igg.serum=11000, csf-missing",
      "kappa-flc.csf=1, serum-missing",
      "glucose.csf=3, serum-missing",
      "measles-igg.serum=30, csf-missing"
    })
    void check_aLonelyValue_missesItsCounterpart(String results, String code) {
      assertThat(codes(PanelText.checked(30, results))).containsExactly(code);
    }

    @ParameterizedTest
    @CsvSource({"lactate.csf=2", "total-protein.csf=400", "leukocytes.csf=3", "lactate.serum=2"})
    void check_aValueThatNeedsNoPair_missesNothing(String results) {
      assertThat(codes(PanelText.checked(30, results))).isEmpty();
    }
  }

  @Nested
  class Others {

    @Test
    void check_erythrocytes_areBloodOnlyOverTheLimit() {
      assertThat(codes(PanelText.checked(30, "erythrocytes.csf=500"))).isEmpty();
      assertThat(codes(PanelText.checked(30, "erythrocytes.csf=501")))
          .containsExactly("blood-contaminated");
      assertThat(codes(PanelText.checked(30, "erythrocytes.csf=<501"))).isEmpty();
      assertThat(codes(PanelText.checked(30, "erythrocytes.csf=>500")))
          .containsExactly("blood-contaminated");
    }

    @Test
    void check_lowSerum_isNamedStrictlyUnderTheLimit() {
      assertThat(codes(PanelText.checked(30, SOUND.replace("42000", "35000")))).isEmpty();
      assertThat(codes(PanelText.checked(30, SOUND.replace("42000", "34999"))))
          .containsExactly("serum-albumin-low");
      assertThat(codes(PanelText.checked(30, SOUND.replace("11000", "6999"))))
          .containsExactly("serum-igg-low");
      assertThat(codes(PanelText.checked(30, SOUND.replace("11000", "<7000"))))
          .containsExactly("serum-igg-low");
    }

    @Test
    void check_albuminQuotientOutsideTheRange_isNamedAndNotSuspected() {
      CheckedPanel checked = PanelText.checked(30, "albumin.csf=60 albumin.serum=42000");

      assertThat(codes(checked)).containsExactly("quotient-outside-range");
      assertThat(checked.suspected()).isEmpty();
    }

    @Test
    void check_aResultBeforeItsDraw_isNamedAtItsTime() {
      Measurement early =
          new Measurement(
              Sample.csf(Analyte.LACTATE),
              Interval.of(2),
              OptionalDouble.empty(),
              Optional.empty(),
              Optional.of(PanelText.DRAWN.minusMinutes(1)),
              "results[0]");
      Panel panel =
          Panel.of(Person.UNKNOWN, List.of(early))
              .withDraws(Draw.at(PanelText.DRAWN), Draw.UNKNOWN);

      assertThat(codes(check(panel))).containsExactly("result-before-draw");
      assertThat(check(panel).problems().getFirst().place()).isEqualTo("results[0].at");
    }

    @Test
    void check_aHaematocritOverOne_isImplausible() {
      assertThat(codes(PanelText.checked(30, "hematocrit.blood=41")))
          .containsExactly("implausible-value");
    }

    @Test
    void problems_ofEveryKind_speakToADoctor() {
      CheckedPanel checked =
          CheckedPanel.check(
              PanelText.of(
                  Person.aged(30),
                  "albumin.csf=42000 albumin.serum=220 igg.csf=30 iga.serum=900"
                      + " erythrocytes.csf=900",
                  300),
              Facts.standard());

      assertThat(checked.problems()).hasSizeGreaterThan(4);
      for (Problem problem : checked.problems()) {
        assertThat(problem.text()).endsWith(".").hasSizeGreaterThan(30);
        assertThat(problem.place()).isNotEmpty();
      }
    }
  }

  private static CheckedPanel check(Panel panel) {
    return CheckedPanel.check(panel, Facts.standard());
  }

  private static List<String> codes(CheckedPanel checked) {
    return checked.problems().stream().map(Problem::code).toList();
  }
}
