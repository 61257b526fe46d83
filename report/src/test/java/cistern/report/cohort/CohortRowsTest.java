package cistern.report.cohort;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CohortRowsTest {

  /** Common practice against formulas in spreadsheets, no source; quoting by RFC 4180. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "plain | plain",
        "-1.5 | -1.5",
        "=1+1 | '=1+1",
        "@SUM(A1) | '@SUM(A1)",
        "+cmd | '+cmd",
        "-cmd | '-cmd",
        "-2+cmd | '-2+cmd",
        "-1.5E-7 | -1.5E-7",
        "a,b | \"a,b\"",
        "say \"x\" | \"say \"\"x\"\"\""
      })
  void cell_anyText_isTextInASpreadsheet(String text, String cell) {
    assertThat(CohortRows.cell(text)).isEqualTo(cell);
  }
}
