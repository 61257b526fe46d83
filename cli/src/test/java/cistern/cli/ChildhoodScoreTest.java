package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.statement.Said;
import cistern.statement.Statement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The bacterial meningitis score of children (Nigrovic 2002, doi 10.1542/peds.110.4.712, abstract:
 * ages, five items, two points for the stain) and the limits of newborns in intensive care
 * (Srinivasan 2012, PMC4593309, abstract).
 */
class ChildhoodScoreTest {

  private static final String QUIET =
      "leukocytes=80 neutrophils=0.3 total-protein=500 glucose=3.4 glucose.serum=5 ";
  private static final String BLOOD = " leukocytes.blood=14000 neutrophils.blood=";
  private static final String ASKED =
      "\"fever\":\"yes\",\"newSeizure\":\"no\",\"antibioticsGiven\":\"no\",\"purpura\":\"no\","
          + "\"immunocompromised\":\"no\",\"neurosurgery\":\"no\"";
  private static final String STAIN =
      "\"microbiology\":[{\"test\":\"gram\",\"in\":\"csf\",\"result\":\"negative\"}],";

  private static String said(String results, String evidence, String person) {
    return ShortWorkup.interpret(
            results, STAIN + "\"person\":{" + person + "},\"evidence\":{" + evidence + "}")
        .statements()
        .stream()
        .filter(s -> s instanceof Said(String code, String text) && code.equals("childhood-score"))
        .map(Statement::text)
        .findFirst()
        .orElse("");
  }

  @ParameterizedTest
  @CsvSource({
    "0.5,  no points. Of 1",
    "0.72, '1 of 6 points (10080 neutrophils/µL in blood), so not of very low risk.'"
  })
  void score_whereAllIsKnown_isSummed(String share, String expected) {
    assertThat(said(QUIET + "erythrocytes=0" + BLOOD + share, ASKED, "\"ageYears\":6"))
        .contains(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "total-protein=500, total-protein=800, at least 1 of 6 points (protein 800",
    "neutrophils=0.3, neutrophils=0.3, not known (missing: neutrophils in blood)",
    "leukocytes=80, leukocytes=9, ''",
    "erythrocytes=0, erythrocytes=10001, ''"
  })
  void score_withoutBloodNeutrophils_isNeverNone(String of, String by, String expected) {
    String results = (QUIET + "erythrocytes=0").replace(of, by);

    String text = said(results, ASKED, "\"ageYears\":6");

    assertThat(text).contains(expected).doesNotContain("no points");
    assertThat(text.isEmpty()).isEqualTo(expected.isEmpty());
  }

  @ParameterizedTest
  @CsvSource({
    "\"ageDays\":28, \"fever\":\"no\"",
    "\"ageYears\":19.1, \"fever\":\"no\"",
    "\"ageYears\":6, \"antibioticsGiven\":\"no\"",
    "\"ageYears\":6, \"purpura\":\"no\"",
    "\"ageYears\":6, \"neurosurgery\":\"no\"",
    "\"ageYears\":6, \"immunocompromised\":\"no\""
  })
  void score_whereItWasNotTried_isNotSaid(String person, String changed) {
    String evidence =
        changed.contains("fever")
            ? ASKED
            : ASKED.replace(changed, changed.replace("\"no\"", "\"yes\""));

    assertThat(said(QUIET + "erythrocytes=0" + BLOOD + 0.5, evidence, person)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "\"preterm\":\"yes\", 12, 2090, WITHIN",
    "\"preterm\":\"yes\", 13, 2091, ABOVE",
    "\"intensiveCare\":\"yes\", 14, 1590, WITHIN",
    "\"intensiveCare\":\"yes\", 15, 1591, ABOVE",
    "'\"preterm\":\"yes\",\"intensiveCare\":\"no\"', 15, 1270, WITHIN",
    "\"preterm\":\"unknown\", 15, 1270, WITHIN"
  })
  void limits_ofNewborns_followBirthAndCare(
      String care, int leukocytes, int protein, Verdict verdict) {
    var findings =
        ShortWorkup.interpret(
                "leukocytes=" + leukocytes + " total-protein=" + protein,
                "\"person\":{\"ageDays\":20," + care + "}")
            .findings();

    assertThat(findings.verdict(FindingCode.LEUKOCYTES)).isEqualTo(verdict);
    assertThat(findings.verdict(FindingCode.TOTAL_PROTEIN)).isEqualTo(verdict);
  }
}
