package cistern.puncture.headache;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.Answers;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.RedFlag;
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
  private final Map<RedFlag, Answer> flags = new EnumMap<>(RedFlag.class);
  private Answer present = Answer.YES;
  private Optional<OffsetDateTime> onset = Optional.empty();
  private Optional<OffsetDateTime> ended = Optional.empty();
  private Optional<OffsetDateTime> asOf = Optional.empty();

  private HeadacheAssessmentsTest allFlags(Answer answer) {
    for (RedFlag flag : RedFlag.values()) {
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
        new HeadacheRecord(present, new Answers(answers), flags, onset, ended, List.of());
    return HeadacheAssessments.of(Facts.standard())
        .check(
            new After(asOf, Optional.of(headache), List.of(), Optional.empty()),
            Optional.of(PUNCTURE));
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
    @EnumSource(RedFlag.class)
    void check_anyYes_showsItsUrgencyFirst(RedFlag flag) {
      allFlags(Answer.NO);
      flags.put(flag, Answer.YES);

      HeadacheAssessment found = check();

      assertThat(found.present()).extracting(RedFlagAnswer::danger).containsExactly(flag.danger());
      assertThat(found.conclusion().toLowerCase(java.util.Locale.ROOT))
          .startsWith(found.present().getFirst().urgency().toLowerCase(java.util.Locale.ROOT));
    }

    @ParameterizedTest
    @EnumSource(RedFlag.class)
    void check_oneUnanswered_countsAsOpen(RedFlag flag) {
      allFlags(Answer.NO);
      flags.remove(flag);

      HeadacheAssessment found = check();

      assertThat(found.open()).containsExactly(flag);
      assertThat(found.conclusion()).contains("counts as open", "1 question is still open");
    }

    @Test
    void check_nothingAsked_leavesEveryQuestionOpen() {
      HeadacheAssessment found =
          HeadacheAssessments.of(Facts.standard()).check(After.UNKNOWN, Optional.empty());

      assertThat(found.open()).hasSize(RedFlag.values().length);
      assertThat(found.conclusion()).contains("20 questions are still open");
    }

    @Test
    void check_allNo_neverSaysNotDangerous() {
      String said = allFlags(Answer.NO).check().conclusion();

      assertThat(said).startsWith("No red flag recorded; call again if");
      assertThat(said.toLowerCase(java.util.Locale.ROOT))
          .doesNotContain("danger", "safe", "harmless");
    }

    @Test
    void check_severalYes_putTheSpineFirst() {
      allFlags(Answer.NO);
      flags.put(RedFlag.DOUBLE_VISION, Answer.YES);
      flags.put(RedFlag.SADDLE_NUMBNESS, Answer.YES);

      assertThat(check().conclusion()).startsWith("Emergency: MRI now");
    }

    @Test
    void check_patternChanged_saysWhatElseItCouldBe() {
      allFlags(Answer.NO);
      flags.put(RedFlag.NO_LONGER_POSTURAL, Answer.YES);

      assertThat(check().other()).contains("subdural", "venous thrombosis");
      flags.put(RedFlag.NO_LONGER_POSTURAL, Answer.NO);
      assertThat(check().other()).isEmpty();
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
      assertThat(found.steps()).isEmpty();
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

  /** van Kooten 2008: patch between 24 h and 7 d of headache. */
  @ParameterizedTest
  @CsvSource({"20, before it", "24, inside it", "168, inside it", "170, after it"})
  void check_patchWindow_isShown(int hours, String where) {
    began(1);
    asOf = Optional.of(PUNCTURE.plusDays(1).plusHours(hours));

    assertThat(check().steps())
        .filteredOn(s -> s.code().equals("blood-patch"))
        .allSatisfy(s -> assertThat(s.window()).endsWith(where).contains("24–168 h"));
  }

  @Test
  void check_steps_namesNoDose() {
    assertThat(check().steps())
        .filteredOn(s -> s.code().equals("comfort") || s.code().equals("caffeine"))
        .hasSize(2)
        .allSatisfy(
            s ->
                assertThat(s.text())
                    .doesNotContain("mg")
                    .containsIgnoringCase("ask the prescriber"));
  }
}
