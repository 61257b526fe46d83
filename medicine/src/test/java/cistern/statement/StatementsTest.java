package cistern.statement;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreted;
import cistern.measurement.Answer;
import cistern.panel.Circumstance;
import cistern.panel.PanelText;
import cistern.panel.Person;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatementsTest {

  private static final String QUIET =
      "albumin.csf=200 albumin.serum=40000 igg.csf=20 igg.serum=10000 ";
  private static final String RAISED =
      "albumin.csf=200 albumin.serum=40000 igg.csf=80 igg.serum=10000 ";

  @ParameterizedTest
  @CsvSource({
    "6, 0, synthesis-demonstrated",
    "1, 0, synthesis-equivocal",
    "0, 0, synthesis-not-demonstrated",
    "0, 4, synthesis-not-demonstrated"
  })
  void answer_byBands_comesFirst(int csfOnly, int shared, String code) {
    Interpretation got =
        Interpreted.of(PanelText.parse(40, QUIET), Interpreted.bands(csfOnly, shared, 0));

    assertThat(codes(got).getFirst()).isEqualTo(code);
    assertThat(texts(got)).doesNotContain("constants");
  }

  /** Law: what was not measured is not said to lie under a limit. */
  @ParameterizedTest
  @CsvSource({"leukocytes.csf=3, false", QUIET + ", true", RAISED + ", false"})
  void answer_ofNegativeBands_saysThatNothingIsAboveOnlyWhereSomethingWasMeasured(
      String values, boolean isSaid) {
    Interpretation got = Interpreted.of(PanelText.parse(40, values), Interpreted.bands(0, 0, 0));

    assertThat(got.statements().getFirst().text().contains("nothing lies above its limit"))
        .isEqualTo(isSaid);
  }

  @Test
  void answer_byNumbersAlone_isSuggested() {
    assertThat(codes(Interpreted.of(40, RAISED)).getFirst()).isEqualTo("synthesis-suggested");
    assertThat(codes(Interpreted.of(40, QUIET)).getFirst()).isEqualTo("synthesis-not-demonstrated");
    assertThat(codes(Interpreted.of(40, "lactate.csf=2")).getFirst())
        .isEqualTo("synthesis-undetermined");
  }

  @Test
  void answer_ofAnInvalidPair_isUndeterminedAndAsksForANewPair() {
    Interpretation got =
        Interpreted.of(PanelText.of(Person.aged(40), RAISED, 300), Interpreted.bands(5, 0, 0));

    assertThat(codes(got)).startsWith("synthesis-undetermined").contains("redraw-pair");
    assertThat(texts(got)).contains("too far apart");
  }

  @Test
  void statements_ofAnIndexWithoutBands_sayThatItHappens() {
    Interpretation got = Interpreted.of(PanelText.parse(40, RAISED), Interpreted.bands(0, 0, 0));

    assertThat(codes(got))
        .contains("synthesis-suggested", "index-without-bands", "repeat-focusing", "add-kappa");
  }

  @Test
  void statements_ofAlikeBandsAndLadders_sayWhatTheyAre() {
    assertThat(codes(Interpreted.of(PanelText.parse(40, QUIET), Interpreted.bands(0, 5, 0))))
        .contains("bands-alike");
    assertThat(
            codes(
                Interpreted.of(
                    PanelText.parse(40, QUIET),
                    new BandReport.Patterned(BandPattern.LADDER, BandReport.Origin.UNKNOWN))))
        .contains("monoclonal-ladder", "immunofixation");
  }

  @ParameterizedTest
  @CsvSource({
    "albumin.csf=200, barrier-holds",
    "albumin.csf=300, barrier-leaks",
    "albumin.csf=1200, barrier-leaks"
  })
  void statements_ofTheBarrier_sayWhetherItLeaks(String csf, String code) {
    Interpretation got = Interpreted.of(40, csf + " albumin.serum=40000");

    assertThat(codes(got)).contains(code);
    assertThat(texts(got).contains("severely")).isEqualTo(csf.contains("1200"));
  }

  @ParameterizedTest
  @CsvSource({
    "0, '', bands were reported",
    "0, erythrocytes.csf=9000, blood",
    "100, '', same day",
    "400, '', too far apart"
  })
  void weakness_theWorst_isNamedOnceInTheAnswerOrAsWeakestLink(
      double hours, String more, String text) {
    Interpretation got = Interpreted.of(PanelText.of(Person.aged(40), QUIET + more, hours));

    assertThat(got.statements().get(0).text() + got.statements().get(1).text()).contains(text);
  }

  /** Bands decide: a number near its limit, or two that disagree, could not change this answer. */
  @Test
  void weakestLink_ofBandsThatDecide_isNoNumber() {
    assertThat(codes(Interpreted.of(PanelText.parse(40, RAISED), Interpreted.bands(5, 0, 0))))
        .contains("synthesis-demonstrated")
        .doesNotContain("weakest-link");
  }

  @Test
  void weakestLink_ofTreatmentAndConflictAndGrey_isNamed() {
    assertThat(
            Interpreted.of(
                    PanelText.parse(40, QUIET)
                        .withCircumstances(Map.of(Circumstance.PLASMA_EXCHANGE, Answer.YES)),
                    Interpreted.bands(0, 0, 0))
                .statements()
                .get(1)
                .text())
        .contains("exchange");
    assertThat(
            Interpreted.of(PanelText.parse(40, RAISED), Interpreted.bands(0, 0, 0))
                .statements()
                .get(1)
                .text())
        .contains("disagree");
    assertThat(
            Interpreted.of(PanelText.parse(40, QUIET), Interpreted.bands(1, 0, 0))
                .statements()
                .getFirst()
                .text())
        .contains("Equivocal");
  }

  @Test
  void statements_ofAnUnconfirmedGel_askForAPerson() {
    BandReport gel =
        new BandReport.ReadFromGel(
            "gel.png",
            cistern.bands.BandCounts.of(5, 0, 0),
            Optional.of(BandPattern.LOCAL),
            OptionalDouble.of(0.99),
            List.of(),
            Optional.empty());
    Interpretation got = Interpreted.of(PanelText.parse(40, QUIET), gel);

    assertThat(texts(got)).contains("to be confirmed by a person");
    assertThat(codes(got)).contains("confirm-gel");
  }

  @Test
  void statements_ofAnything_neverClaimTooMuch() {
    for (int csfOnly = 0; csfOnly < 3; csfOnly++) {
      for (String results : List.of(QUIET, RAISED, "", "erythrocytes.csf=9000 " + RAISED)) {
        String text =
            texts(Interpreted.of(PanelText.parse(40, results), Interpreted.bands(csfOnly, 1, 0)));

        assertThat(text)
            .doesNotContainIgnoringCase("exclude")
            .doesNotContainIgnoringCase("absent")
            .doesNotContainIgnoringCase("confirms MS")
            .doesNotContainIgnoringCase("diagnostic of")
            .doesNotContainIgnoringCase("no synthesis");
      }
    }
  }

  private static List<String> codes(Interpretation got) {
    return got.statements().stream().map(Statement::code).toList();
  }

  private static String texts(Interpretation got) {
    return got.statements().stream().map(Statement::text).reduce("", (a, b) -> a + " " + b);
  }
}
