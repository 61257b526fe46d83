package cistern.exchange.lab;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.Status;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Codes and official names, held together. */
class LoincTest {

  private static final Facts FACTS = Facts.standard();

  /** Source: LOINC's own extracts, code and name seen side by side. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "1746-7;Albumin [Mass/volume] in Cerebral spinal fluid;albumin.csf",
        "1751-7;Albumin [Mass/volume] in Serum or Plasma;albumin.serum",
        "2464-6;IgG [Mass/volume] in Cerebral spinal fluid;igg.csf",
        "2465-3;IgG [Mass/volume] in Serum or Plasma;igg.serum",
        "2342-4;Glucose [Mass/volume] in Cerebral spinal fluid;glucose.csf",
        "2345-7;Glucose [Mass/volume] in Serum or Plasma;glucose.serum",
        "14744-7;Glucose [Moles/volume] in Cerebral spinal fluid;glucose.csf",
        "2880-3;Protein [Mass/volume] in Cerebral spinal fluid;total-protein.csf",
        "26465-5;Leukocytes [#/volume] in Cerebral spinal fluid;leukocytes.csf",
        "26464-8;Leukocytes [#/volume] in Blood;leukocytes.blood",
        "26453-1;Erythrocytes [#/volume] in Blood;erythrocytes.blood",
        "101281-4;Neurofilament light chain [Mass/volume] in Serum or Plasma by Immunoassay;"
            + "neurofilament-light.serum",
        "14117-6;IgG clearance/Albumin clearance [Ratio] in Serum and CSF;igg-index"
      })
  void find_codeOfTheTable_hasItsOfficialNameAndMeaning(String code, String name, String meaning) {
    LoincCode found = Loinc.find(code).orElseThrow();
    assertThat(found.name()).isEqualTo(name);
    assertThat(found.meaning()).isEqualTo(meaning);
  }

  @Test
  void all_everyCode_hasItsCheckDigitAndSaysWhereItStands() {
    assertThat(Loinc.all())
        .allMatch(code -> LoincCode.isWellFormed(code.code()))
        .noneMatch(code -> code.cited().words().isBlank() || code.name().isBlank());
  }

  /** Source: traps met in public lists: eGFR, a stem without check digit, a wrong check digit. */
  @ParameterizedTest
  @ValueSource(strings = {"48642-3", "49067-x", "30934-4", "LP14335-3", "1746-8", ""})
  void find_codeOfAnotherMeaning_isNotKnown(String code) {
    assertThat(Loinc.find(code)).isEmpty();
  }

  @Test
  void toWrite_codeFromMemory_onlyWhenPolicySaysSo() {
    assertThat(Loinc.toWrite("hematocrit.blood", "%", FACTS)).isEmpty();
    Fact fact = FACTS.fact(Loinc.POLICY_KEY);
    Facts local =
        FACTS.with(
            new Policy(
                "test",
                Map.of(
                    fact.key(),
                    new Policy.Change(new FactValue.Word(Loinc.WRITTEN), "test, no source"))));
    LoincCode code = Loinc.toWrite("hematocrit.blood", "%", local).orElseThrow();
    assertThat(code.status()).isEqualTo(Status.MEMORY);
  }

  /** Mass and substance have codes of their own; a fraction is not a percentage. */
  @ParameterizedTest
  @CsvSource({
    "glucose.csf,mg/dL,2342-4",
    "glucose.csf,mmol/L,14744-7",
    "lymphocytes.csf,%,26479-6",
    "lymphocytes.csf,1,",
    "lactate.csf,mg/dL,",
    "kappa-flc.csf,mg/L,",
    "albumin.csf,umol/L,"
  })
  void toWrite_unitOfAKind_givesTheCodeOfThatKind(String meaning, String unit, String code) {
    assertThat(Loinc.toWrite(meaning, unit, FACTS).map(LoincCode::code).orElse(null))
        .isEqualTo(code);
  }
}
