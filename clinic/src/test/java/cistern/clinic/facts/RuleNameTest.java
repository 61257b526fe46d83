package cistern.clinic.facts;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Keys as policy files have them, and how a doctor would call them. */
class RuleNameTest {

  @ParameterizedTest
  @CsvSource({
    "kappa-index.upper, 'κ index, upper limit'",
    "albumin-quotient.limit-rule, 'Albumin quotient, limit rule'",
    "igg-index.borderline, 'IgG index, grey zone from'",
    "cv.lactate.csf, 'Coefficient of variation, lactate, CSF'",
    "bands.cut-off, 'Bands, cut-off'",
    "page.time-zone, 'Page, time zone'",
    "unit.glucose.csf, 'Unit, glucose, CSF'",
    "unit.glucose.csf@St. Example, 'Unit, glucose, CSF, of St. Example'"
  })
  void of_aKey_isWhatItIsCalled(String key, String name) {
    assertThat(RuleName.of(key)).isEqualTo(name);
  }
}
