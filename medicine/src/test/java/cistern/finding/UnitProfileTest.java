package cistern.finding;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import cistern.panel.PanelText;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Units that a laboratory writes in; molar masses as among the facts. */
class UnitProfileTest {

  private static final WrittenUnit MG_PER_DL = new WrittenUnit("mg/dL", 10, false);

  /** mg/dL of glucose, 180.156 g/mol, in mmol/L. */
  private static final WrittenUnit GLUCOSE = new WrittenUnit("mg/dL", 10 / 180.156, false);

  /** mg/dL of lactate, 90.08 g/mol, in mmol/L. */
  private static final WrittenUnit LACTATE = new WrittenUnit("mg/dL", 10 / 90.08, false);

  @ParameterizedTest
  @CsvSource({
    "62, 6.2",
    "220, 22",
    "1234, 123.4",
    "0.3, 0.03",
    "40033, 4003",
    "0, 0",
    "162.03125, 16.2"
  })
  void number_ofAMassConcentration_keepsItsDigitsAndNoMore(double milligrams, String text) {
    assertThat(MG_PER_DL.number(milligrams)).isEqualTo(text);
  }

  /** 61 mg/dL typed, held as 3.386 mmol/L, is 61 again; 2.7 mmol/L are 24.3 mg/dL, two digits. */
  @Test
  void number_ofASubstance_isWhatWasTypedAndNeverFiner() {
    assertThat(GLUCOSE.number(61 * 10 / 180.156)).isEqualTo("61");
    assertThat(LACTATE.number(24.3 * 10 / 90.08)).isEqualTo("24.3");
    assertThat(LACTATE.number(2.7)).isEqualTo("24");
    assertThat(LACTATE.limit(2.7)).isEqualTo("24.3");
    assertThat(LACTATE.like(3.0333, 2.7)).isEqualTo("27");
  }

  @Test
  void number_ofCells_keepsEveryDigitOfTheCount() {
    WrittenUnit billions = new WrittenUnit("× 10⁹/L", 1000, true);
    assertThat(billions.number(12_345)).isEqualTo("12.345");
    assertThat(billions.limit(5)).isEqualTo("0.005");
    assertThat(new WrittenUnit("/mm³", 1, true).of("12", "cells")).isEqualTo("12 cells/mm³");
    assertThat(billions.of("0.012", "cells")).isEqualTo("0.012 × 10⁹/L cells");
  }

  @Nested
  class Laws {

    private static final int TIMES = 2000;
    private static final double[] SIZES = {10, 10_000, 1000, 0.001, 10 / 180.156, 10 / 90.08, 66.5};

    /** What is printed, read back, is the value within half a unit of its last digit. */
    @Test
    void number_readBack_isTheValueWithinItsPrecision() {
      SplittableRandom random = new SplittableRandom(7);
      for (int i = 0; i < TIMES; i++) {
        double size = SIZES[random.nextInt(SIZES.length)];
        double held = Math.exp(random.nextDouble() * 16 - 6);
        String printed = new WrittenUnit("u", size, false).number(held);
        BigDecimal read = new BigDecimal(printed);
        double written = held / size;
        double half = Math.max(0.5 * Math.pow(10, -places(written)), 1e-12 * written);
        assertThat(read.doubleValue()).as("%s of %s", held, size).isCloseTo(written, within(half));
      }
    }

    /** Three digits, whole from one hundred upwards. */
    private static int places(double written) {
      int whole = (int) Math.floor(Math.log10(written)) + 1;
      return Math.max(0, 3 - whole);
    }

    private static org.assertj.core.data.Offset<Double> within(double most) {
      return org.assertj.core.data.Offset.offset(most * (1 + 1e-9));
    }

    /** As it is printed, a value lies on the side of its printed limit on which it lies. */
    @Test
    void besideLimit_nearIt_neverChangesSides() {
      SplittableRandom random = new SplittableRandom(8);
      for (int i = 0; i < TIMES; i++) {
        WrittenUnit unit = new WrittenUnit("u", SIZES[random.nextInt(SIZES.length)], false);
        double limit = Math.round(Math.exp(random.nextDouble() * 9 - 1) * 10) / 10.0 + 0.1;
        double held = limit * (1 + (random.nextDouble() - 0.5) * Math.pow(10, -random.nextInt(4)));
        BigDecimal printed = new BigDecimal(unit.besideLimit(held, limit));
        BigDecimal cut = new BigDecimal(unit.limit(limit, held));
        assertThat(printed.compareTo(cut)).isEqualTo(Double.compare(held, limit));
      }
    }
  }

  @Test
  void interpret_underAProfile_writesOtherNumbersAndJudgesTheSame() {
    Workup workup = workup(Optional.empty());
    Interpretation plain = Interpreter.of(Facts.standard()).interpret(workup);
    Interpretation written = Interpreter.of(american("")).interpret(workup);

    for (FindingCode code : FindingCode.values()) {
      Finding before = plain.findings().get(code);
      Finding after = written.findings().get(code);
      assertThat(after.value()).isEqualTo(before.value());
      assertThat(after.limits()).isEqualTo(before.limits());
      assertThat(after.verdict()).isEqualTo(before.verdict());
      assertThat(after.uncertainty()).isEqualTo(before.uncertainty());
    }
    String said = text(written);
    assertThat(said)
        .contains("312 mg/dL", "18 mg/dL", "90 mg/dL", "leukocytes/mm³", "500 erythrocytes/mm³");
    assertThat(said).doesNotContain("mmol/L", "mg/L", "/µL");
    assertThat(text(plain)).contains("mmol/L", "mg/L", "/µL");
  }

  @Test
  void interpret_ofANamedLaboratory_writesInItsUnitsWhateverTheHouseChose() {
    Interpreter interpreter = Interpreter.of(american("@Invented  harbour"));

    assertThat(text(interpreter.interpret(workup(Optional.of("invented Harbour ")))))
        .contains("mg/dL")
        .doesNotContain("mmol/L");
    assertThat(text(interpreter.interpret(workup(Optional.of("Invented Hill")))))
        .contains("mmol/L")
        .doesNotContain("mg/dL");
  }

  /** The molar mass of the facts in force: a policy may change it beside the unit. */
  @Test
  void of_aMolarMassThatPolicyChanged_usesIt() {
    Map<String, Policy.Change> changes = new LinkedHashMap<>();
    changes.put("molar-mass.lactate", change(new FactValue.Figure(100)));
    changes.put("unit.lactate.csf", change(new FactValue.Unit("mg/dL", 10, true)));
    UnitProfile profile = UnitProfile.of(Facts.standard().with(new Policy("test", changes)));

    assertThat(profile.find(Sample.csf(Analyte.LACTATE)).orElseThrow().size()).isEqualTo(0.1);
  }

  private static Policy.Change change(FactValue value) {
    return new Policy.Change(value, "test");
  }

  private static Facts american(String laboratory) {
    Map<String, Policy.Change> changes = new LinkedHashMap<>();
    FactValue mass = new FactValue.Unit("mg/dL", 10, false);
    FactValue substance = new FactValue.Unit("mg/dL", 10, true);
    changes.put("unit.total-protein.csf" + laboratory, change(mass));
    changes.put("unit.glucose.csf" + laboratory, change(substance));
    changes.put("unit.glucose.serum" + laboratory, change(substance));
    changes.put("unit.lactate.csf" + laboratory, change(substance));
    for (String cells : List.of("leukocytes", "erythrocytes")) {
      changes.put(
          "unit." + cells + ".csf" + laboratory, change(new FactValue.Unit("/mm3", 1, false)));
    }
    return Facts.standard().with(new Policy("test", changes));
  }

  private static Workup workup(Optional<String> laboratory) {
    Workup plain =
        new Workup(
            "test",
            PanelText.parse(
                40,
                "leukocytes.csf=2140 neutrophils.csf=0.91 erythrocytes.csf=600"
                    + " total-protein.csf=3120 glucose.csf=1.0 glucose.serum=7.8 lactate.csf=10.0"),
            new cistern.bands.BandReport.NotReported(),
            List.of());
    return new Workup(
        plain.id(),
        new Workup.Remarks(false, Optional.empty(), Workup.Letter.UNKNOWN, laboratory),
        plain.panel(),
        plain.bands(),
        plain.clinical(),
        plain.procedure(),
        plain.problems());
  }

  /** Every sentence that holds a number with its unit. */
  private static String text(Interpretation said) {
    StringBuilder all = new StringBuilder();
    said.statements().forEach(s -> all.append(s.text()).append('\n'));
    said.weighed().flags().forEach(f -> all.append(f.text()).append('\n'));
    said.problems().forEach(p -> all.append(p.text()).append('\n'));
    said.findings().all().forEach(f -> all.append(f.note()).append('\n'));
    return all.toString();
  }
}
