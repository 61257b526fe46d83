package cistern.report.page;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReferrerLetterTest {

  private static final InventedPuncture PANEL_2 = InventedPuncture.withLocalSynthesis();

  static Stream<InventedPuncture> punctures() {
    return PatientPageTest.punctures();
  }

  private static Parsed letter(InventedPuncture puncture) {
    return Parsed.of(
        Page.of("Cistern", Facts.standard())
            .toPaper(puncture.interpretation(), Audience.REFERRER, ""));
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void letter_anyResult_hasItsFivePartsAndIsShort(InventedPuncture puncture) {
    Parsed letter = letter(puncture);
    assertThat(letter.texts("//h2"))
        .containsExactly("Question", "Answer", "Meaning", "Outstanding", "Plan");
    assertThat(letter.texts("//*[@class='part']"))
        .allSatisfy(part -> assertThat(part.length()).isGreaterThan(20));
    assertThat(letter.texts("//main").getFirst().length())
        .as("half a page of 10.5 pt")
        .isLessThan(2_600);
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void letter_anyResult_leavesDiagnosisToTheClinician(InventedPuncture puncture) {
    assertThat(letter(puncture).text())
        .contains("decided by the treating neurologist")
        .doesNotContain("excludes", "confirms", "diagnostic of", "absent");
  }

  @Test
  void outstanding_bandsNotReported_namesThem() {
    assertThat(letter(PANEL_2).text()).contains("Oligoclonal bands have not been reported.");
  }

  @Test
  void outstanding_nothing_isSaid() {
    assertThat(letter(PANEL_2.withBands(6, 0)).text())
        .contains("Nothing in the laboratory’s part of this work-up.");
  }

  @Test
  void outstanding_manyProblems_areCounted() {
    InventedPuncture many =
        PANEL_2
            .with(Analyte.ALBUMIN, 42_000, 220)
            .with(Analyte.IGG, 11_000, 62)
            .with(Analyte.IGA, 3_000, 2)
            .with(Analyte.IGM, 2_000, 1)
            .with(Analyte.GLUCOSE, 300, 5);
    assertThat(letter(many).texts("//li"))
        .anyMatch(l -> l.endsWith("on the page for the clinician."));
  }
}
