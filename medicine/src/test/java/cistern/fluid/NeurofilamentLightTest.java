package cistern.fluid;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandReport;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.Status;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The printed limits: Bornhorst 2022 and Simrén 2022 (PMC9297091), both from their abstracts. */
class NeurofilamentLightTest {

  private static final String PLASMA = "Simoa NF-light, EDTA plasma";
  private static final Sample SERUM = Sample.serum(Analyte.NEUROFILAMENT_LIGHT);

  /** Each row at its first and last age: at the limit within, over it above. */
  @ParameterizedTest
  @CsvSource({
    "20, 8.4, bornhorst-2022",
    "29.99, 8.4, bornhorst-2022",
    "30, 11.4, bornhorst-2022",
    "49.9, 15.4, bornhorst-2022",
    "50, 20.8, bornhorst-2022",
    "60, 28, bornhorst-2022",
    "70, 37.9, bornhorst-2022",
    "80, 51.2, bornhorst-2022",
    "94, 51.2, bornhorst-2022",
    "5, 7, simren-2022",
    "17.9, 7, simren-2022",
    "18, 10, simren-2022",
    "19.9, 10, simren-2022"
  })
  void interpret_atTheLimitOfAnAge_isWithinAndOverItAbove(double age, double limit, String rule) {
    Finding at = of(age, PLASMA, Interval.of(limit));
    Finding over = of(age, PLASMA, Interval.of(limit + 0.01));

    assertThat(at.verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(over.verdict()).isEqualTo(Verdict.ABOVE);
    assertThat(over.limitRule()).contains(rule);
    assertThat(over.grounds().status()).isEqualTo(Status.READ);
    assertThat(over.uncertainty().probabilityAbove()).isPresent();
  }

  @ParameterizedTest
  @CsvSource({"5, 7", "18, 10", "50.9, 10", "51, 15", "61, 20", "70.9, 20", "71, 35"})
  void interpret_theOtherTableByPolicy_judgesByItsRows(double age, double limit) {
    Facts facts = by("simren-2022");

    assertThat(of(facts, age, PLASMA, Interval.of(limit)).verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(of(facts, age, PLASMA, Interval.of(limit + 0.01)).verdict())
        .isEqualTo(Verdict.ABOVE);
  }

  @Test
  void interpret_twoTables_standBesideEachOtherWhereTheyDiffer() {
    Finding finding = of(35, PLASMA, Interval.of(10.5));

    assertThat(finding.verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(finding.note())
        .contains("11.4 ng/L, the 97.5th centile (Bornhorst 2022)")
        .contains("10.0 ng/L, the 95th centile (Simrén 2022)")
        .contains("by Simrén 2022 it is above")
        .contains("not for diagnosis")
        .doesNotContain("this value in serum");
    assertThat(finding.grounds().sources()).anyMatch(s -> s.contains("PMC9297091"));
    assertThat(of(35, PLASMA, Interval.of(9)).note()).doesNotContain("it is");
  }

  @Test
  void interpret_serum_saysThatTheLimitsArePlasmas() {
    assertThat(of(35, "single-molecule array", Interval.of(30)))
        .satisfies(
            finding -> {
              assertThat(finding.verdict()).isEqualTo(Verdict.ABOVE);
              assertThat(finding.note())
                  .contains("the limits were measured in plasma, this value in serum");
            });
  }

  @ParameterizedTest
  @CsvSource({
    "'', 35, no assay is named",
    "Lumipulse G, 35, not for Lumipulse G",
    "'Ella, Simoa-calibrated', 35, alone",
    "not Simoa, 35, alone",
    "Simoa, , age",
    "Simoa, 4.99, no limit for this age"
  })
  void interpret_platformOrAgeUnknown_keepsTheValueWithoutAVerdict(
      String assay, Double age, String reason) {
    Finding finding = of(Facts.standard(), age == null ? Double.NaN : age, assay, Interval.of(900));

    assertThat(finding.number()).hasValue(900);
    assertThat(finding.verdict()).isEqualTo(Verdict.UNDETERMINED);
    assertThat(finding.limits().isKnown()).isFalse();
    assertThat(finding.note()).contains("not judged", reason, "not for diagnosis");
  }

  @Test
  void interpret_censored_standsOnlyWhereBothEndsAgree() {
    assertThat(of(35, PLASMA, Interval.below(11.4)).verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(of(35, PLASMA, Interval.below(12)).verdict()).isEqualTo(Verdict.UNDETERMINED);
    assertThat(of(35, PLASMA, Interval.above(11.4)).verdict()).isEqualTo(Verdict.ABOVE);
  }

  @ParameterizedTest
  @CsvSource({"CSF, 900.0 ng/L in CSF", "BLOOD, 900.0 ng/L in blood"})
  void interpret_measuredInAnotherFluid_hasNoValueAndSaysWhatIsThere(Compartment in, String said) {
    Sample sample = new Sample(Analyte.NEUROFILAMENT_LIGHT, in);
    Finding finding = of(Facts.standard(), 35, measurement(sample, "Simoa", Interval.of(900)));
    Finding under = of(Facts.standard(), 35, measurement(sample, "Simoa", Interval.below(900)));

    assertThat(finding.hasValue()).isFalse();
    assertThat(finding.isAsked()).isTrue();
    assertThat(finding.note())
        .contains(said + ", for which no limit is held")
        .contains("not measured: serum neurofilament light");
    assertThat(under.note()).startsWith("< " + said);
  }

  /** A number beside its limit: nothing else of the interpretation moves with it. */
  @Test
  void interpret_farAboveItsLimit_movesNothingElse() {
    Interpretation without = interpretation(Facts.standard(), 35, List.of());
    Interpretation with =
        interpretation(Facts.standard(), 35, List.of(measurement(SERUM, PLASMA, Interval.of(500))));

    assertThat(with.findings().verdict(FindingCode.NEUROFILAMENT_LIGHT)).isEqualTo(Verdict.ABOVE);
    assertThat(with.weighed()).isEqualTo(without.weighed());
    assertThat(with.alerts()).isEqualTo(without.alerts());
    assertThat(with.statements()).isEqualTo(without.statements());
    assertThat(with.problems()).isEqualTo(without.problems());
  }

  private static Facts by(String table) {
    Policy.Change change = new Policy.Change(new FactValue.Word(table), "protocol 7");
    return Facts.standard()
        .with(new Policy("ours", Map.of("neurofilament-light.limit-rule", change)));
  }

  private static Finding of(double age, String assay, Interval value) {
    return of(Facts.standard(), age, assay, value);
  }

  private static Finding of(Facts facts, double age, String assay, Interval value) {
    return of(facts, age, measurement(SERUM, assay, value));
  }

  private static Finding of(Facts facts, double age, Measurement measured) {
    return interpretation(facts, age, List.of(measured))
        .findings()
        .get(FindingCode.NEUROFILAMENT_LIGHT);
  }

  private static Interpretation interpretation(Facts facts, double age, List<Measurement> results) {
    Person person = Double.isNaN(age) ? Person.UNKNOWN : Person.aged(age);
    return Interpreter.of(facts)
        .interpret(
            new Workup("test", Panel.of(person, results), new BandReport.NotReported(), List.of()));
  }

  private static Measurement measurement(Sample sample, String assay, Interval value) {
    return new Measurement(
        sample,
        value,
        OptionalDouble.empty(),
        Optional.of(assay).filter(a -> !a.isEmpty()),
        Optional.empty(),
        "results[0]");
  }
}
