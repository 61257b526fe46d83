package cistern.puncture.bleeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.fact.Facts;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.PuncturedPerson.Kidney;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrugCheckTest {

  private static final DrugCheck CHECK = DrugCheck.of(Facts.standard());
  private static final Clearances CLEARANCES = Clearances.of(Facts.standard());

  private static PuncturedPerson person(
      double age, String sex, @org.jspecify.annotations.Nullable Double kg, double creatinine) {
    return Given.subject(age, sex)
        .with(
            new Kidney(
                kg == null ? OptionalDouble.empty() : OptionalDouble.of(kg),
                creatinine == 0 ? OptionalDouble.empty() : OptionalDouble.of(creatinine),
                Optional.empty()));
  }

  private static DoseClass dose(String typed, PuncturedPerson person) {
    return CHECK
        .check(
            Given.nothing().taking(Given.drug(typed, DoseClass.UNKNOWN)).before().anticoagulation(),
            person)
        .all()
        .getFirst()
        .taken()
        .doseClass();
  }

  /**
   * Kietaibl 2022 as quoted: enoxaparin up to 40 mg/d, LMWH up to 50 IU/kg/d are low; a clinical
   * reference for the oral ones.
   */
  @ParameterizedTest
  @CsvSource({
    "Clexane 40 mg 1x, LOW",
    "Clexane 40 mg 2x, HIGH",
    "Clexane 40 mg, UNKNOWN",
    "Clexane 60 mg, HIGH",
    "Clexane 0.4 0-0-1, LOW",
    "Enoxaparin 4000 IU od, LOW",
    "Enoxaparin 1 mg/kg bid, HIGH",
    "Fragmin 5000 IE 1x, UNKNOWN",
    "Xarelto 2.5 mg, LOW",
    "Xarelto 10 mg 1x, LOW",
    "Xarelto 10 mg, UNKNOWN",
    "Xarelto 20, HIGH",
    "Eliquis 5 mg, HIGH",
    "Arixtra 2.5, LOW",
    "Arixtra 7.5 mg, HIGH",
    "Pradaxa 150, UNKNOWN",
    "Marcumar, UNKNOWN"
  })
  void check_typedDose_isLowOrHighOnlyWhenSettled(String typed, DoseClass expected) {
    assertThat(dose(typed, Given.subject(50, "male"))).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "Fragmin 5000 IE 1x, 100, LOW",
    "Fragmin 5000 IE 1x, 99, HIGH",
    "Innohep 14000 IE, 80, HIGH"
  })
  void check_doseForEachKilogram_needsTheWeight(String typed, double kg, DoseClass expected) {
    assertThat(dose(typed, person(50, "male", kg, 80))).isEqualTo(expected);
  }

  /**
   * Apixaban 2.5 mg is a full dose with two of age 80, under 60 kg, creatinine 1.5 mg/dL (132.6).
   */
  @ParameterizedTest
  @CsvSource({
    "80, 59, 80, HIGH",
    "79, 59, 80, LOW",
    "80, 60, 132.7, HIGH",
    "80, 60, 132.5, LOW",
    "80, , 0, UNKNOWN"
  })
  void check_reducedApixaban_dependsOnThePerson(
      double age, Double kg, double creatinine, DoseClass expected) {
    assertThat(dose("Eliquis 2.5 mg 1-0-1", person(age, "female", kg, creatinine)))
        .isEqualTo(expected);
  }

  @Test
  void check_statedClass_comesBeforeTheTypedDose() {
    assertThat(
            CHECK
                .check(
                    Given.nothing()
                        .taking(Given.drug("Xarelto 2.5 mg", DoseClass.HIGH))
                        .before()
                        .anticoagulation(),
                    PuncturedPerson.UNKNOWN)
                .all()
                .getFirst()
                .taken()
                .doseClass())
        .isEqualTo(DoseClass.HIGH);
  }

  /** (140 − 70)·60·0.85/(72·1.0) = 49.6 mL/min; creatinine 88.4 µmol/L is 1.0 mg/dL (derived). */
  @Test
  void clearance_ofAWomanOf70_isCockcroftGault() {
    Clearance found = CLEARANCES.check(Given.nothing().before(), person(70, "female", 60.0, 88.4));

    assertThat(found.value().orElseThrow()).isEqualTo(49.583333, within(1e-5));
    assertThat(found.near()).containsExactly(50.0);
  }

  @Test
  void clearance_stated_comesBeforeTheComputed() {
    Before before = Given.nothing().clearance(90).before();

    assertThat(CLEARANCES.check(before, person(70, "female", 60.0, 88.4)).value()).hasValue(90);
  }

  @ParameterizedTest
  @CsvSource({
    "70, female, , 88.4",
    "70, female, 60, 0",
    "70, other, 60, 88.4",
    "17.9, male, 60, 88.4"
  })
  void clearance_withAnInputMissing_isUnknown(
      double age, String sex, Double kg, double creatinine) {
    assertThat(CLEARANCES.check(Given.nothing().before(), person(age, sex, kg, creatinine)).value())
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"2030-12-02T10:00:00Z, true", "2030-12-02T09:59:59Z, false"})
  void clearance_ofAnOldCreatinine_isUnknown(OffsetDateTime at, boolean isKnown) {
    PuncturedPerson person =
        Given.subject(70, "female")
            .with(new Kidney(OptionalDouble.of(60), OptionalDouble.of(88.4), Optional.of(at)));

    assertThat(CLEARANCES.check(Given.nothing().before(), person).isKnown()).isEqualTo(isKnown);
  }

  @ParameterizedTest
  @CsvSource({"74.9, 0", "75, 1", "85, 1", "85.1, 0", "20, 1", "20.1, 0", "25, 1"})
  void clearance_within5OfAThreshold_isNear(double value, int near) {
    assertThat(
            CLEARANCES
                .check(Given.nothing().clearance(value).before(), PuncturedPerson.UNKNOWN)
                .near())
        .hasSize(near);
  }
}
