package cistern.exchange.ucum;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Units as laboratories write them; source of the traps: UCUM functional tests and two converters.
 */
class SpellingsTest {

  private static final Spellings SPELLINGS = Spellings.of(Conversions.of(Facts.standard()));

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "G/L;ALBUMIN;g/L",
        "G/L;LEUKOCYTES;10*9/L",
        "MG/DL;IGG;mg/dL",
        "mcg/mL;KAPPA;ug/mL",
        "µg/mL;KAPPA;ug/mL",
        "cells/uL;LEUKOCYTES;{cells}/uL",
        "/mm³;LEUKOCYTES;/uL",
        "10^6/L;LEUKOCYTES;10*6/L",
        "x10E6/L;ERYTHROCYTES;10*6/L",
        "Mpt/l;LEUKOCYTES;10*6/L",
        "mmol/l;GLUCOSE;mmol/L",
        "mg/dl;TOTAL_PROTEIN;mg/dL",
        "mM;LACTATE;mmol/L",
        "IU/ml;MEASLES_IGG;[IU]/mL",
        "%;HEMATOCRIT;%",
        "M/L;ERYTHROCYTES;10*6/L"
      })
  void ucum_spelling_isTheUnitOfTheAnalyte(String written, Analyte analyte, String unit) {
    assertThat(SPELLINGS.ucum(written, analyte)).contains(unit);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "IU/mL;ALBUMIN",
        "mg/24.h;IGG",
        "mg/24h;ALBUMIN",
        "kDa;ALBUMIN",
        "mmHg;GLUCOSE",
        "foo;IGG",
        "/uL;ALBUMIN",
        "G/L;GLUCOSE2"
      })
  void ucum_unitOfAnotherKind_isNone(String written, String analyte) {
    Analyte measured = analyte.equals("GLUCOSE2") ? Analyte.HEMATOCRIT : Analyte.valueOf(analyte);
    assertThat(SPELLINGS.ucum(written, measured)).isEmpty();
  }
}
