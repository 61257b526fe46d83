package cistern.clinic.paste;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.ucum.Conversions;
import cistern.fact.Facts;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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
        "Lactate liquor 1.6 mmol/L | lactate.csf | 1.6 mmol/L",
        "Albumin CSF 20,4 mg/dL | albumin.csf | 20.4 mg/dL",
        "IgG serum >30 g/L | igg.serum | >30 g/L",
        "Albumin CSF 420 mg/L H | albumin.csf | 420 mg/L",
        "Albumin CSF 420 H mg/L 100-350 | albumin.csf | 420 mg/L",
        "Albumin CSF 204 mg/L high | albumin.csf | 204 mg/L",
        "IgG CSF 5.6 mg/dL (ref 0.5 - 4.0 mg/dL) | igg.csf | 5.6 mg/dL",
        "IgG CSF;<0,5;mg/dL;<4,0;* | igg.csf | <0.5 mg/dL",
        "Laktat Liquor 0,900 mmol/L | lactate.csf | 0.900 mmol/L"
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
        "Albumin CSF 1,204 mg/L | a comma",
        "Albumin CSF 1.204,5 mg/L | a comma",
        "Albumin CSF 1 204 mg/L | something stands behind",
        "Albumin CSF 204 mg/L 44 g/L | something stands behind",
        "Albumin CSF 204 mg/L 100-350 mg/dL | something stands behind",
        "Albumin CSF 1'204 mg/L | a comma",
        "Albumin CSF 204 | no unit",
        "Albumin 204 mg/L | the fluid is not named",
        "Zinc CSF 3 mg/L | this name is not known",
        "Albumin CSF 204 mmHg | the unit is not known for albumin",
        "Leukocytes CSF 9 mg/L | the unit is not known for leukocytes",
        "Results of 9 May | this name",
        "Albumin CSF negative | no number",
        "Albumin CSF 204 mg/L perhaps | something stands behind"
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

    assertThat(lines).hasSize(2).hasOnlyElementsOfType(PastedLine.NotUnderstood.class);
    assertThat(lines.getLast().line()).isEqualTo("CSF IgG 5.7 mg/dL");
  }

  private List<String> taken(String block) {
    return reader.read(block).stream()
        .filter(PastedLine.Understood.class::isInstance)
        .map(PastedLine.Understood.class::cast)
        .map(u -> u.sample().code() + " " + u.typed())
        .toList();
  }

  private List<String> left(String block) {
    return reader.read(block).stream()
        .filter(PastedLine.NotUnderstood.class::isInstance)
        .map(PastedLine.NotUnderstood.class::cast)
        .map(PastedLine.NotUnderstood::reason)
        .toList();
  }

  /** The same two results however the table says its units. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Test\tCSF (mg/L)\tSerum (g/L)\nAlbumin\t204\t44",
        "\tLiquor [mg/L]\tSerum g/L\nAlbumin\t204\t44\t",
        "Analyte;CSF;Unit;Serum;Unit\nAlbumin;204;mg/L;44;g/L",
        "Parameter | CSF | Serum\nAlbumin | 204 mg/L | 44 g/L H",
        "Test     Liquor      Serum\nAlbumin  204 mg/L    44 g/L",
        "Test\tCSF\tRef. range\tSerum\tFlag\nAlbumin\t204 mg/L\t<350\t44 g/L\tH",
        "Test\tSerum (g/L)\tCSF (mg/L)\nAlbumin\t44\t204"
      })
  void read_ofATableWithBothFluids_isUnderstood(String block) {
    assertThat(taken(block))
        .containsExactlyInAnyOrder("albumin.csf 204 mg/L", "albumin.serum 44 g/L");
    assertThat(left(block)).isEmpty();
  }

  @Test
  void read_ofATableWithOneColumnOfUnits_takesItForTheWholeRow() {
    assertThat(taken("Test\tCSF\tSerum\tUnit\nGlukose\t3,4\t5,2\tmmol/L\nIgG\t\t10,8\tg/L"))
        .containsExactly(
            "glucose.csf 3.4 mmol/L", "glucose.serum 5.2 mmol/L", "igg.serum 10.8 g/L");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Test;CSF;Serum#Albumin;204;44 g/L | no unit",
        "Test;CSF (mg/L);Serum (g/L)#Albumin;204 mg/dL;44 | two units, mg/dL and mg/L",
        "Test;CSF (mg/L);Serum (g/L)#Albumin;204;44;17 | other cells",
        "Test;CSF (mg/L);Serum (g/L)#Zinc;204;44 | this name is not known",
        "Test;CSF (mg/L);Serum (g/L)#Albumin;1,204;44 | a comma",
        "Test;CSF (mg/L);Serum (g/L)#Albumin;20,4;1.204 | a comma",
        "Test;CSF (mmHg);Serum (g/L)#Albumin;204;44 | no number",
        "Test;CSF (mg/L);Quotient#Albumin;204;4.6 | column “Quotient”",
        "Test;CSF (mg/L);CSF (mg/L)#Albumin;204;44 | no number",
        "Test  CSF (mg/L)  Serum (g/L)#Albumin  44 | other cells"
      })
  void read_ofATableWithAnythingUnclear_saysSo(String block, String reason) {
    assertThat(left(block.replace('#', '\n'))).anyMatch(r -> r.contains(reason));
    assertThat(taken(block.replace('#', '\n'))).doesNotContain("albumin.csf 44 mg/L");
  }

  @Test
  void read_ofALineBehindATable_isALineAgain() {
    assertThat(taken("Test;CSF (mg/L)\nAlbumin;204\n\nLactate CSF 1.6 mmol/L"))
        .containsExactly("albumin.csf 204 mg/L", "lactate.csf 1.6 mmol/L");
  }
}
