package cistern.exchange.intake;

import static cistern.exchange.intake.FhirIntakeTest.CSF;
import static cistern.exchange.intake.FhirIntakeTest.PATIENT;
import static cistern.exchange.intake.FhirIntakeTest.bundle;
import static cistern.exchange.intake.FhirIntakeTest.loinc;
import static cistern.exchange.intake.FhirIntakeTest.observation;
import static cistern.exchange.intake.FhirIntakeTest.quantity;
import static cistern.exchange.intake.Hl7IntakeTest.HEAD;
import static cistern.exchange.intake.Hl7IntakeTest.message;
import static cistern.exchange.intake.Hl7IntakeTest.order;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values whose unit a bundle or a message says twice; invented data. */
class SaidUnitsTest {

  /** Text and UCUM code of one quantity: what differs in size is read by neither. */
  @ParameterizedTest
  @CsvSource({
    "1746-7, g/L, mg/L, false",
    "1746-7, MG/L, mg/L, true",
    "1746-7, Milligramm je Liter, mg/L, true",
    "1751-7, G/L, g/L, true",
    "1751-7, MG/L, g/L, false",
    "26464-8, G/L, 10*9/L, true",
    "26464-8, G/L, 10*6/L, false",
    "14744-7, mmol/L, mg/dL, false",
    "26479-6, %, 1, false"
  })
  void read_textOfTheUnitAgainstItsCode_isReadOnlyWhenOfTheSameSize(
      String code, String unit, String ucum, boolean isRead) {
    Read read =
        Read.of(
            bundle(
                PATIENT,
                CSF,
                observation("z", "s1", loinc("2880-3") + "," + quantity("410", "mg/L")),
                observation("a", "", loinc(code) + "," + twoUnits("220", unit, ucum))));
    assertThat(read.values()).hasSize(isRead ? 2 : 1);
    if (!isRead) {
      assertThat(read.document())
          .contains("\"Bundle.entry[3].resource\"", "unit-not-understood", ucum + ", " + unit);
    }
  }

  private static String twoUnits(String value, String unit, String code) {
    return quantity(value, code)
        .replace("\"unit\": \"" + code + "\"", "\"unit\": \"" + unit + "\"");
  }

  @Test
  void read_codeThatIsNotOfUcumAgainstTheText_isNotRead() {
    String two = twoUnits("220", "g/L", "mg/L").replace("http://unitsofmeasure.org", "urn:example");
    assertThat(Read.of(bundle(observation("a", "", loinc("1746-7") + "," + two))).refusals())
        .singleElement()
        .asString()
        .startsWith("nothing-understood");
  }

  @ParameterizedTest
  @CsvSource({
    "mg/L, mg/L, 100-350",
    "mg/l, mg/L, 100-350",
    "g/L, g/L, ''",
    "g/L, mg/L, ''",
    "mg/dL, mg/dL, ''"
  })
  void read_rangeInAnotherUnitThanTheValue_isListedAndNotKeptAsItsLimit(
      String unit, String code, String kept) {
    String end = twoUnits("%s", unit, code).replace("\"valueQuantity\": ", "");
    String range =
        ", \"referenceRange\": [ { \"low\": %s, \"high\": %s } ]"
            .formatted(end.formatted("100"), end.formatted("350"));
    Read read =
        Read.of(
            bundle(
                CSF,
                observation("a", "s1", loinc("1746-7") + "," + quantity("220", "mg/L") + range)));
    assertThat(read.values()).containsExactly("albumin.csf 220.0");
    if (kept.isEmpty()) {
      assertThat(read.document())
          .contains("\"Bundle.entry[1].resource.referenceRange[0]\"", "100-350", ", mg/L")
          .contains("unit-not-understood")
          .doesNotContain("reportedLimit");
    } else {
      assertThat(read.document()).contains("\"reportedLimit\": \"" + kept + "\"");
      assertThat(read.problems()).isEmpty();
    }
  }

  /** What stands beside the identifier of a unit: a text, and a code of another system. */
  @ParameterizedTest
  @CsvSource({
    "mg/L^milligram per litre^UCUM, albumin.csf 220.0",
    "mg/L^mg/l^UCUM^MGL^MGL^L, albumin.csf 220.0",
    "MGPL^mg per L^L^mg/L^mg/L^UCUM, albumin.csf 220.0",
    "mg/L^g/L^UCUM, ''",
    "mg/L^milligram per litre^UCUM^g/L^^L, ''",
    "mg/L^^L^g/L^^UCUM, ''"
  })
  void read_unitWithTextAndOtherCode_isReadOnlyWhenTheyAgree(String unit, String value) {
    Read read =
        Read.of(message("NM|2880-3^Protein^LN||410|mg/L|||||F", "NM|1746-7^Alb^LN||220|" + unit));
    assertThat(read.values().stream().filter(v -> v.startsWith("albumin")).toList())
        .isEqualTo(value.isEmpty() ? List.of() : List.of(value));
    if (value.isEmpty()) {
      assertThat(read.document())
          .contains("OBX-5 (line 5)", "unit-not-understood")
          .containsPattern("mg/L.*, g/L|g/L, mg/L");
    }
  }

  /** G/L is 10*9/L for cells and g/L for a protein. */
  @Test
  void read_unitInCapitals_meansWhatTheAnalyteIsMeasuredIn() {
    Read read =
        Read.of(
            HEAD
                + order("SPM|1|||BLD^Blood\r", "NM|26464-8^WBC^LN||7.1|10*9/L^G/L^UCUM")
                + order("SPM|1|||SER^Serum\r", "NM|1751-7^Albumin^LN||42|g/L^G/L^UCUM"));
    assertThat(read.values()).containsExactly("leukocytes.blood 7100.0", "albumin.serum 42000.0");
  }
}
