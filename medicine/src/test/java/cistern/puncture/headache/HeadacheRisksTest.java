package cistern.puncture.headache;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.Needle.Tip;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.Subject;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeadacheRisksTest {

  private static final Facts FACTS = Facts.standard();

  private static HeadacheRisk risk(Given given, Subject subject) {
    return HeadacheRisks.of(FACTS).check(given.before(), subject);
  }

  private static Given known(Tip tip) {
    return Given.allNo().needle(tip);
  }

  private static RiskFactor factor(HeadacheRisk risk, String code) {
    return risk.factors().stream().filter(f -> f.code().equals(code)).findFirst().orElseThrow();
  }

  /**
   * Odds arithmetic: p₀ 4.2 % (Nath 2018) × 1.82 → 7.4 %; × 2.21 → 15 %; × 4.30 → 43 % (Wu 2006,
   * Amorim 2012), as printed on the project's page of facts with whole numbers.
   */
  @Nested
  class Published {

    @Test
    void check_printedExamples_comeOut() {
      HeadacheRisk woman = risk(known(Tip.ATRAUMATIC), Given.subject(60, "female"));
      HeadacheRisk young = risk(known(Tip.ATRAUMATIC), Given.subject(40, "female"));
      HeadacheRisk again =
          risk(
              known(Tip.ATRAUMATIC).yes(Question.PREVIOUS_PUNCTURE_HEADACHE),
              Given.subject(40, "female"));

      assertThat(woman.high()).isEqualTo(0.074, within(0.0005));
      assertThat(young.high()).isEqualTo(0.15, within(0.005));
      assertThat(again.high()).isEqualTo(0.43, within(0.005));
      OutsideCheck.of(
              "Odds of headache: three printed examples",
              "Nath 2018; Wu 2006; Amorim 2012, arithmetic of the project's facts",
              "the printed digits")
          .toTable("3 of 3 agree");
    }

    /** Nath 2018: 4.2 % atraumatic, 11.0 % conventional. */
    @ParameterizedTest
    @CsvSource({"ATRAUMATIC, 0.042", "CUTTING, 0.11"})
    void check_noFactor_isTheBaseline(Tip tip, double baseline) {
      HeadacheRisk risk = risk(known(tip), Given.subject(60, "male"));

      assertThat(risk.low()).isEqualTo(baseline, within(1e-12));
      assertThat(risk.high()).isEqualTo(baseline, within(1e-12));
    }
  }

  @Nested
  class Laws {

    @Test
    void check_unknownFactor_widensTheBandToBothAnswers() {
      Subject subject = Given.subject(60, "male");
      HeadacheRisk with =
          risk(known(Tip.CUTTING).yes(Question.PREVIOUS_PUNCTURE_HEADACHE), subject);
      HeadacheRisk without = risk(known(Tip.CUTTING), subject);
      HeadacheRisk unknown =
          risk(
              known(Tip.CUTTING).with(Question.PREVIOUS_PUNCTURE_HEADACHE, Answer.UNKNOWN),
              subject);

      assertThat(unknown.low()).isEqualTo(without.low());
      assertThat(unknown.high()).isEqualTo(with.high());
      assertThat(factor(unknown, "previous-headache").state()).isEqualTo(RiskFactor.State.UNKNOWN);
    }

    @Test
    void check_nothingKnown_spansEveryKnownCase() {
      HeadacheRisk nothing = risk(Given.nothing(), Subject.UNKNOWN);
      for (Tip tip : new Tip[] {Tip.ATRAUMATIC, Tip.CUTTING}) {
        for (double age : new double[] {25, 40, 70}) {
          HeadacheRisk some = risk(known(tip), Given.subject(age, "female"));
          assertThat(nothing.low()).isLessThanOrEqualTo(some.low());
          assertThat(nothing.high()).isGreaterThanOrEqualTo(some.high());
        }
      }
      assertThat(nothing.baselines()).hasSize(2);
      assertThat(nothing.label()).startsWith("Unvalidated");
    }

    /** Only the larger of 4.30 and 4.23 counts. */
    @Test
    void check_bothHistories_countOnce() {
      Subject subject = Given.subject(60, "male");
      HeadacheRisk one =
          risk(known(Tip.ATRAUMATIC).yes(Question.PREVIOUS_PUNCTURE_HEADACHE), subject);
      HeadacheRisk both =
          risk(
              known(Tip.ATRAUMATIC)
                  .yes(Question.PREVIOUS_PUNCTURE_HEADACHE, Question.HEADACHE_DISORDER),
              subject);

      assertThat(both.high()).isEqualTo(one.high());
      assertThat(factor(both, "headache-disorder").state())
          .isEqualTo(RiskFactor.State.NOT_APPLICABLE);
    }

    @ParameterizedTest
    @CsvSource({"30.9, 1", "31, 2.21", "50.9, 2.21", "51, 1"})
    void check_age_countsFromThirtyOneToFifty(double age, double ratio) {
      HeadacheRisk risk = risk(known(Tip.ATRAUMATIC), Given.subject(age, "male"));

      assertThat(risk.high() / (1 - risk.high())).isEqualTo(0.042 / 0.958 * ratio, within(1e-12));
    }
  }

  @Test
  void check_pregnancy_leavesTheFactorFemaleOut() {
    Subject pregnant =
        new Subject(
            OptionalDouble.of(60),
            Optional.of("female"),
            Answer.YES,
            Answer.NO,
            Subject.Draw.UNKNOWN);

    assertThat(factor(risk(known(Tip.ATRAUMATIC), pregnant), "female").state())
        .isEqualTo(RiskFactor.State.NOT_PRESENT);
  }

  @Test
  void check_headacheDisorderKnownElsewhere_isUsed() {
    Subject subject =
        new Subject(
            OptionalDouble.of(60),
            Optional.of("other"),
            Answer.NO,
            Answer.YES,
            Subject.Draw.UNKNOWN);
    Given given = known(Tip.ATRAUMATIC).with(Question.HEADACHE_DISORDER, Answer.UNKNOWN);

    HeadacheRisk risk = risk(given, subject);

    assertThat(factor(risk, "headache-disorder").state()).isEqualTo(RiskFactor.State.PRESENT);
    assertThat(factor(risk, "female").state()).isEqualTo(RiskFactor.State.UNKNOWN);
  }

  @Test
  void check_styletAndBevel_countForTheirNeedleOnly() {
    Given both = known(Tip.CUTTING).yes(Question.STYLET_REPLACED, Question.BEVEL_ACROSS);
    HeadacheRisk cutting = risk(both, Given.subject(60, "male"));
    HeadacheRisk atraumatic = risk(both.needle(Tip.ATRAUMATIC), Given.subject(60, "male"));

    assertThat(cutting.high()).isGreaterThan(0.11);
    assertThat(factor(cutting, "stylet-replaced").state())
        .isEqualTo(RiskFactor.State.NOT_APPLICABLE);
    assertThat(atraumatic.high()).isLessThan(0.042);
    assertThat(factor(atraumatic, "bevel-across").state())
        .isEqualTo(RiskFactor.State.NOT_APPLICABLE);
  }

  @Test
  void check_advisoryFactors_areSaidAndNotCounted() {
    assertThat(risk(known(Tip.ATRAUMATIC), Given.subject(70, "male")).factors())
        .filteredOn(f -> f.state() == RiskFactor.State.ADVISORY)
        .extracting(RiskFactor::code)
        .contains("bmi", "volume", "attempts", "operator", "old-age");
  }

  @Test
  void check_localBaseline_isUsed() {
    Facts local =
        FACTS.with(
            new Policy(
                "ward",
                Map.of(
                    "headache-risk.baseline.atraumatic",
                    new Policy.Change(new FactValue.Figure(0.2), "ward audit"))));

    assertThat(
            HeadacheRisks.of(local)
                .check(known(Tip.ATRAUMATIC).before(), Given.subject(60, "male"))
                .high())
        .isEqualTo(0.2, within(1e-12));
  }
}
