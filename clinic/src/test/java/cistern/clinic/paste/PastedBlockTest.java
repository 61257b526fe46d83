package cistern.clinic.paste;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.ucum.Conversions;
import cistern.fact.Facts;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines as spreadsheets and laboratories write them. */
class PastedBlockTest {

  private final PastedBlock reader = PastedBlock.of(Conversions.of(Facts.standard()));

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Albumin CSF 204 mg/L | albumin.csf | 204 mg/L",
        "CSF albumin: 20.4 mg/dL | albumin.csf | 20.4 mg/dL",
        "CSF-IgG;5.6;mg/dL | igg.csf | 5.6 mg/dL",
        "IgG (serum) = 10.8 g/L | igg.serum | 10.8 g/L",
        "κ free light chains in CSF <0.3 mg/L | kappa-flc.csf | <0.3 mg/L",
        "Leukocytes CSF 9 /µL | leukocytes.csf | 9 /uL",
        "Erythrocytes blood 4.5 10*6/uL | erythrocytes.blood | 4.5 10*6/uL",
        "Immunoglobulin G, cerebrospinal fluid, 56 mg/L | igg.csf | 56 mg/L",
        "Lactate liquor 1.6 mmol/L | lactate.csf | 1.6 mmol/L"
      })
  void read_ofALineWithEverything_isUnderstood(String line, String sample, String typed) {
    PastedLine read = reader.read(line).getFirst();

    assertThat(read).isInstanceOf(PastedLine.Understood.class);
    assertThat(((PastedLine.Understood) read).sample().code()).isEqualTo(sample);
    assertThat(((PastedLine.Understood) read).typed()).isEqualTo(typed);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Albumin CSF 20,4 mg/dL | a comma",
        "Albumin CSF 1'204 mg/L | a comma",
        "Albumin CSF 204 | no unit",
        "Albumin 204 mg/L | the fluid is not named",
        "Zinc CSF 3 mg/L | this name is not known",
        "Albumin CSF 204 mmHg | the unit is not known for albumin",
        "Leukocytes CSF 9 mg/L | the unit is not known for leukocytes",
        "Results of 9 May | this name",
        "Albumin CSF negative | no number",
        "Albumin CSF 204 mg/L high | "
      })
  void read_ofALineWithAnythingUnclear_isNotTaken(String line, String reason) {
    PastedLine read = reader.read(line).getFirst();

    assertThat(read).isInstanceOf(PastedLine.NotUnderstood.class);
    assertThat(((PastedLine.NotUnderstood) read).reason())
        .contains(String.valueOf(reason).replace("null", ""));
  }

  @Test
  void read_ofAResultTwice_takesNeitherForGranted() {
    List<PastedLine> lines = reader.read("IgG CSF 56 mg/L\n\n  \nCSF IgG 5.7 mg/dL");

    assertThat(lines).hasSize(2);
    assertThat(lines.getLast()).isInstanceOf(PastedLine.NotUnderstood.class);
    assertThat(lines.getLast().line()).isEqualTo("CSF IgG 5.7 mg/dL");
  }
}
