package cistern.interpretation;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.finding.Finding;
import cistern.finding.FindingCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What stands beside a child's verdict and does not judge. */
class ChildrensNotesTest {

  /** 0.3 against 0.5 × 10⁻³: two laboratories' tables, neither published with its source. */
  @ParameterizedTest
  @CsvSource({"3, 0.4, true", "3, 0.29, false", "3, 0.5, false", "5, 0.4, false", "0.26, 1, true"})
  void albuminQuotient_betweenTwoLaboratories_saysThatTheyDiffer(
      double age, double q, boolean differs) {
    Finding finding =
        Interpreted.of(age, "albumin.csf=%s albumin.serum=60000".formatted(q * 60))
            .findings()
            .get(FindingCode.ALBUMIN_QUOTIENT);

    assertThat(finding.note().contains("laboratories differ")).isEqualTo(differs);
  }

  /** A value that is doubted has no verdict that could differ: 16 mg/L is no plausible albumin. */
  @Test
  void albuminQuotient_ofADoubtedValue_saysNothingOfOtherLaboratories() {
    assertThat(note(3, "albumin-quotient", "albumin.csf=16 albumin.serum=40000"))
        .contains("doubted")
        .doesNotContain("laboratories");
  }

  /** Leen 2012, abstract; Nigrovic 2011, abstract: 11 mg/L for 1,000 erythrocytes, 500 − 2.5·11. */
  @Test
  void notes_ofAChild_sayWhatWasMeasuredInChildren() {
    String results =
        "lactate.csf=1.5 glucose.csf=2.5 glucose.serum=5 total-protein.csf=500 erythrocytes.csf=2500";

    assertThat(note(9, "lactate", results)).contains("0.88 to 1.41");
    assertThat(note(9, "glucose-ratio", results)).contains("0.41 to 0.53");
    assertThat(note(9, "total-protein-corrected", results)).contains("11 mg/L", ": 472 mg/L");
    for (String code : new String[] {"lactate", "glucose-ratio", "total-protein-corrected"}) {
      assertThat(note(18, code, results)).doesNotContain("centile", "in children");
    }
  }

  private static String note(double age, String code, String results) {
    return Interpreted.of(age, results)
        .findings()
        .get(FindingCode.parse(code).orElseThrow())
        .note();
  }
}
