package cistern.puncture.headache;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.WarningSign;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class HeadacheAssessmentsTest {

  private static final OffsetDateTime PUNCTURE = OffsetDateTime.parse("2031-03-02T10:00:00Z");

  private final Map<Question, Answer> answers = new EnumMap<>(Question.class);
  private final Map<WarningSign, Answer> flags = new EnumMap<>(WarningSign.class);
  private Answer present = Answer.YES;
  private Optional<OffsetDateTime> onset = Optional.empty();
  private Optional<OffsetDateTime> ended = Optional.empty();
  private Optional<OffsetDateTime> asOf = Optional.empty();

  private HeadacheAssessmentsTest allFlags(Answer answer) {
    for (WarningSign flag : WarningSign.values()) {
      flags.put(flag, answer);
    }
    return this;
  }

  private HeadacheAssessmentsTest began(double daysAfter) {
    onset = Optional.of(PUNCTURE.plus(Duration.ofMinutes(Math.round(daysAfter * 24 * 60))));
    return this;
  }

  private HeadacheAssessment check() {
    HeadacheRecord headache =
        new HeadacheRecord(present, new ProcedureAnswers(answers), flags, onset, ended, List.of());
    return HeadacheAssessments.of(Facts.standard())
        .check(
            new After(asOf, Optional.of(headache), List.of(), Optional.empty()),
            Optional.of(PUNCTURE),
            List.of());
  }

  private static Definition definition(HeadacheAssessment assessment, String start) {
    return assessment.definitions().stream()
        .filter(d -> d.name().startsWith(start))
        .findFirst()
        .orElseThrow();
  }

  @Nested
  class RedFlags {

    @ParameterizedTest
    @EnumSource(WarningSign.class)
    void check_anyYes_showsItsDanger(WarningSign flag) {
      allFlags(Answer.NO);
      flags.put(flag, Answer.YES);

      HeadacheAssessment found = check();

      assertThat(found.present()).extracting(RedFlagAnswer::danger).containsExactly(flag.danger());
    }

    @ParameterizedTest
    @EnumSource(WarningSign.class)
    void check_oneUnanswered_countsAsOpen(WarningSign flag) {
      allFlags(Answer.NO);
      flags.remove(flag);

      HeadacheAssessment found = check();

      assertThat(found.open()).containsExactly(flag);
      assertThat(found.conclusion()).contains("counts as open", "1 question is still open");
    }

    @Test
    void check_nothingAsked_leavesEveryQuestionOpen() {
      HeadacheAssessment found =
          HeadacheAssessments.of(Facts.standard())
              .check(After.UNKNOWN, Optional.empty(), List.of());

      assertThat(found.open()).hasSize(WarningSign.values().length);
      assertThat(found.conclusion())
          .contains(WarningSign.values().length + " questions are still open");
    }

    @Test
    void check_allNo_neverSaysNotDangerous() {
      String said = allFlags(Answer.NO).check().conclusion();

      assertThat(said).startsWith("No red flag recorded; call again if");
      assertThat(said.toLowerCase(java.util.Locale.ROOT))
          .doesNotContain("danger", "safe", "harmless");
    }
  }

  /** ICHD-3 7.2.1: within 5 days, not better explained, gone within 2 weeks or after a patch. */
  @Nested
  class Published {

    @ParameterizedTest
    @CsvSource({"0, met", "5, met", "5.1, not-met", "-0.1, not-met"})
    void check_onset_mustLieWithinFiveDays(double days, String verdict) {
      answers.put(Question.BETTER_EXPLANATION, Answer.NO);

      assertThat(definition(began(days).check(), "ICHD-3 beta").verdict()).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({"YES, not-met", "NO, met", "UNKNOWN, undetermined"})
    void check_betterExplanation_decides(Answer better, String verdict) {
      answers.put(Question.BETTER_EXPLANATION, better);

      assertThat(definition(began(1).check(), "ICHD-3 beta").verdict()).isEqualTo(verdict);
    }

    @Test
    void check_unknownOnset_isUndetermined() {
      answers.put(Question.BETTER_EXPLANATION, Answer.NO);

      assertThat(definition(check(), "ICHD-3 beta").verdict()).isEqualTo("undetermined");
    }

    @Test
    void check_noHeadache_isNotMet() {
      present = Answer.NO;

      HeadacheAssessment found = check();

      assertThat(definition(found, "ICHD-3 beta").verdict()).isEqualTo("not-met");
    }

    @ParameterizedTest
    @CsvSource({"NO, not-met", "YES, met", "UNKNOWN, undetermined"})
    void check_longerThanTwoWeeks_dependsOnAPatch(Answer patched, String verdict) {
      answers.put(Question.BETTER_EXPLANATION, Answer.NO);
      answers.put(Question.PATCHED, patched);
      asOf = Optional.of(PUNCTURE.plusDays(20));

      assertThat(definition(began(1).check(), "ICHD-3 beta").verdict()).isEqualTo(verdict);
    }

    @Test
    void check_goneInTime_isMet() {
      answers.put(Question.BETTER_EXPLANATION, Answer.NO);
      ended = Optional.of(PUNCTURE.plusDays(6));
      asOf = Optional.of(PUNCTURE.plusDays(40));

      assertThat(definition(began(1).check(), "ICHD-3 beta").reason())
          .contains("gone within two weeks");
    }

    @ParameterizedTest
    @CsvSource({
      "YES, UNKNOWN, met",
      "NO, NO, not-met",
      "NO, UNKNOWN, undetermined",
      "UNKNOWN, YES, met"
    })
    void check_newestEdition_needsPressureOrLeak(Answer low, Answer leak, String verdict) {
      answers.put(Question.BETTER_EXPLANATION, Answer.NO);
      answers.put(Question.PRESSURE_LOW, low);
      answers.put(Question.LEAK_ON_IMAGING, leak);

      assertThat(definition(began(1).check(), "ICHD-3 2018").verdict()).isEqualTo(verdict);
    }

    @Test
    void check_untested_isCalledClinical() {
      answers.put(Question.BETTER_EXPLANATION, Answer.NO);

      assertThat(definition(began(1).check(), "ICHD-3 2018").reason()).contains("clinical");
    }

    @ParameterizedTest
    @CsvSource({"YES, YES, met", "YES, NO, not-met", "YES, UNKNOWN, undetermined"})
    void check_posture_isADefinitionOfItsOwn(Answer upright, Answer lying, String verdict) {
      answers.put(Question.WORSE_UPRIGHT, upright);
      answers.put(Question.BETTER_LYING, lying);

      assertThat(definition(check(), "postural").verdict()).isEqualTo(verdict);
    }
  }
}
