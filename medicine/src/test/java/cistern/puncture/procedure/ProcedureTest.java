package cistern.puncture.procedure;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.measurement.Answer;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProcedureTest {

  @Test
  void parse_everyCode_findsItsOwn() {
    assertThat(CsfTest.values()).allSatisfy(t -> assertThat(CsfTest.parse(t.code())).contains(t));
    assertThat(PunctureQuestion.values())
        .allSatisfy(q -> assertThat(PunctureQuestion.parse(q.code())).contains(q));
    assertThat(TubeTemplate.values())
        .allSatisfy(t -> assertThat(TubeTemplate.parse(t.code())).contains(t));
    assertThat(Position.values()).allSatisfy(p -> assertThat(Position.parse(p.code())).contains(p));
    assertThat(DoseClass.values())
        .allSatisfy(d -> assertThat(DoseClass.parse(d.code())).contains(d));
    assertThat(Needle.Tip.values())
        .allSatisfy(t -> assertThat(Needle.Tip.parse(t.code())).contains(t));
    assertThat(CsfTest.parse("blood")).isEmpty();
  }

  @Test
  void fields_ofAGroup_areDifferent() {
    for (QuestionGroup group : QuestionGroup.values()) {
      assertThat(Question.of(group))
          .isNotEmpty()
          .extracting(Question::field)
          .doesNotHaveDuplicates();
    }
    assertThat(Arrays.stream(WarningSign.values()).map(WarningSign::field)).doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @CsvSource({"YES, UNKNOWN, YES", "NO, UNKNOWN, UNKNOWN", "NO, NO, NO", "UNKNOWN, YES, YES"})
  void any_ofTwo_isYesBeforeUnknownBeforeNo(Answer one, Answer other, Answer any) {
    ProcedureAnswers answers =
        new ProcedureAnswers(Map.of(Question.LATEX, one, Question.IODINE, other));

    assertThat(answers.any(List.of(Question.LATEX, Question.IODINE))).isEqualTo(any);
  }

  @Test
  void withTime_whenOneIsGiven_keepsIt() {
    OffsetDateTime given = OffsetDateTime.parse("2031-03-02T10:00:00Z");
    OffsetDateTime now = given.plusDays(3);

    assertThat(After.UNKNOWN.withTime(now).asOf()).contains(now);
    assertThat(After.UNKNOWN.withTime(given).withTime(now).asOf()).contains(given);
  }
}
