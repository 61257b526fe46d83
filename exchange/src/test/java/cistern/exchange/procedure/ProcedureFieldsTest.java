package cistern.exchange.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.exchange.json.InputProblem;
import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.finding.Problem;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Anticoagulation;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.PunctureQuestion;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.QuestionGroup;
import cistern.puncture.procedure.TubeTemplate;
import cistern.puncture.procedure.WarningSign;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ProcedureFieldsTest {

  private static final WorkupFile FILE = WorkupFile.of(Facts.standard());

  private static WorkupReading read(String members) {
    String text = "{\"workup\":1,\"id\":\"t\",\"results\":[]," + members + "}";
    return FILE.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static WorkupReading.Understood understood(String members) {
    return (WorkupReading.Understood) read(members);
  }

  private static Procedure procedure(String inside) {
    return understood("\"procedure\":{" + inside + "}").workup().procedure();
  }

  private static List<String> refused(String members) {
    return ((WorkupReading.NotValid) read(members))
        .problems().stream().map(InputProblem::place).toList();
  }

  @Test
  void read_nothing_isUnknown() {
    assertThat(understood("\"invented\":true").workup().procedure()).isEqualTo(Procedure.UNKNOWN);
  }

  private static final String BEFORE =
      """
      "before": {
        "question": "malignancy", "plannedAt": "2031-03-02T10:00:00Z",
        "tests": ["cytology", "cells"], "tubeTemplate": "bands-last", "volumeMl": 9,
        "serumPlanned": "yes", "consent": "no",
        "signs": {"glasgowComaScale": 15, "papilloedema": "no"},
        "imaging": {"reviewed": "yes", "at": "2031-02-20T09:00:00Z"},
        "coagulation": {"platelets": {"value": 150000, "unit": "/uL"}, "inr": 1.1,
          "apttRatio": 1.0, "at": "2031-03-01T08:00:00Z", "inrNormal": "yes"},
        "creatinineClearance": {"value": 0.5, "unit": "mL/s"},
        "antithrombotics": [{"drug": "Apixaban", "doseClass": "high",
          "lastDoseAt": "2031-02-28T08:00:00Z", "hoursSinceLastDose": 50,
          "dose": "5 mg", "indication": "af",
          "level": {"value": 25, "unit": "ug/L"}, "antiXa": {"value": 100, "unit": "[IU]/L"},
          "thrombinTimeNormal": "no"}],
        "thrombosis": {"drugElutingStent": "yes", "drugElutingStentMonthsAgo": 8.5,
          "cha2ds2Vasc": 4},
        "spine": {"lumbarFusion": "yes", "bmi": 34, "skinToCsfCm": 8},
        "allergies": {"latex": "yes"},
        "needle": {"tip": "atraumatic", "gauge": 22, "styletReplaced": "yes"},
        "history": {"previousPunctureHeadache": "yes"}
      }
      """;

  @Test
  void read_before_keepsOrderTimesAndAnswers() {
    Before before = procedure(BEFORE).before();

    assertThat(before.order().question()).contains(PunctureQuestion.MALIGNANCY);
    assertThat(before.order().tests()).containsExactly(CsfTest.CYTOLOGY, CsfTest.CELLS);
    assertThat(before.order().template()).contains(TubeTemplate.BANDS_LAST);
    assertThat(before.order().volumeMl()).hasValue(9);
    assertThat(before.comaScore()).hasValue(15);
    assertThat(before.times().plannedAt()).isPresent();
    assertThat(before.times().imagedAt()).isPresent();
    assertThat(before.body().bmi()).hasValue(34);
    assertThat(before.needle().tip()).isEqualTo(Needle.Tip.ATRAUMATIC);
    assertThat(before.answers().byQuestion())
        .containsEntry(Question.STYLET_REPLACED, Answer.YES)
        .containsEntry(Question.CONSENT, Answer.NO)
        .containsEntry(Question.INR_NORMAL, Answer.YES)
        .hasSize(10);
  }

  @Test
  void read_before_keepsBleedingAndClottingInCanonicalUnits() {
    Anticoagulation known = procedure(BEFORE).before().anticoagulation();

    assertThat(known.coagulation().platelets().orElseThrow()).isEqualTo(150, within(1e-9));
    assertThat(known.creatinineClearance().orElseThrow()).isEqualTo(30, within(1e-9));
    assertThat(known.monthsSince(Question.DRUG_ELUTING_STENT)).hasValue(8.5);
    assertThat(known.cha2ds2Vasc()).hasValue(4);
    assertThat(known.inUse().getFirst())
        .satisfies(d -> assertThat(d.doseClass()).isEqualTo(DoseClass.HIGH))
        .satisfies(d -> assertThat(d.level().nanogramsPerMl()).hasValue(25))
        .satisfies(d -> assertThat(d.level().antiXa().orElseThrow()).isEqualTo(0.1, within(1e-12)))
        .satisfies(d -> assertThat(d.level().thrombinTimeNormal()).isEqualTo(Answer.NO));
  }

  @Test
  void read_doneAndAfter_keepEveryPart() {
    Procedure read =
        procedure(
            """
            "done": {"operator": "x", "level": "L3/4", "attempts": 2, "position": "prone",
              "traumatic": "yes", "needle": {"tip": "cutting", "gauge": 20, "bevelAcross": "yes"},
              "complications": ["a", "b"]},
            "after": {"asOf": "2031-03-09T09:00:00Z", "contact": "ward",
              "headache": {"present": "yes", "onsetAt": "2031-03-03T16:00:00Z",
                "endedAt": "2031-03-05T16:00:00Z", "worseUpright": "yes",
                "redFlags": {"fever": "no"}, "days": [{"day": 1, "severity": 6}]},
              "sent": [{"test": "culture", "sentAt": "2031-03-02T10:40:00Z",
                "dueAt": "2031-03-05T10:40:00Z", "receivedAt": "2031-03-04T10:40:00Z",
                "positive": "no", "told": [{"who": "x", "at": "2031-03-04T10:50:00Z"}]}]}
            """);

    assertThat(read.done().position()).isEqualTo(Position.PRONE);
    assertThat(read.done().answers().byQuestion())
        .containsEntry(Question.BEVEL_ACROSS, Answer.YES)
        .containsEntry(Question.TRAUMATIC, Answer.YES);
    assertThat(read.done().complications()).hasSize(2);
    assertThat(read.after().headache().orElseThrow().answer(WarningSign.FEVER))
        .isEqualTo(Answer.NO);
    assertThat(read.after().headache().orElseThrow().days()).hasSize(1);
    assertThat(read.after().sent().getFirst().told()).hasSize(1);
    assertThat(read.after().sent().getFirst().positive()).isEqualTo(Answer.NO);
  }

  @Test
  void read_noList_isUnknownAndAnEmptyOneSaysNone() {
    assertThat(procedure("\"before\":{}").before().anticoagulation().antithrombotics()).isEmpty();
    assertThat(
            procedure("\"before\":{\"antithrombotics\":[]}")
                .before()
                .anticoagulation()
                .antithrombotics())
        .contains(List.of());
  }

  @ParameterizedTest
  @CsvSource({"10, mm[Hg], 13.5951", "20, cm[H2O], 20", "200, mm[H2O], 20", "1.96133, kPa, 20"})
  void read_openingPressure_isConverted(double value, String unit, double cmWater) {
    Procedure read =
        understood(
                "\"draws\":{\"csf\":{\"openingPressure\":{\"value\":%s,\"unit\":\"%s\"}}}"
                    .formatted(value, unit))
            .workup()
            .procedure();

    assertThat(read.done().openingPressure().orElseThrow()).isEqualTo(cmWater, within(1e-3));
  }

  @ParameterizedTest
  @EnumSource(QuestionGroup.class)
  void read_everyQuestion_isAskedForWhereTheGuideSaysSo(QuestionGroup group) {
    List<String> path = Arrays.asList(group.path().split("\\.", -1));
    String fields =
        Question.of(group).stream()
            .map(q -> "\"" + q.field() + "\":\"yes\"")
            .collect(Collectors.joining(","));
    String inside = fields;
    for (String part : path.reversed()) {
      inside = "\"" + part + "\":{" + inside + "}";
    }
    WorkupReading.Understood read = understood("\"procedure\":{" + inside + "}");

    assertThat(read.workup().problems()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "\"procedure\":3; procedure",
        "\"procedure\":{\"before\":[]}; procedure.before",
        "\"procedure\":{\"before\":{\"signs\":{\"papilloedema\":\"maybe\"}}};"
            + " procedure.before.signs.papilloedema",
        "\"procedure\":{\"before\":{\"signs\":{\"glasgowComaScale\":2}}};"
            + " procedure.before.signs.glasgowComaScale",
        "\"procedure\":{\"before\":{\"signs\":{\"glasgowComaScale\":16}}};"
            + " procedure.before.signs.glasgowComaScale",
        "\"procedure\":{\"before\":{\"tests\":[\"urine\"]}}; procedure.before.tests",
        "\"procedure\":{\"before\":{\"antithrombotics\":\"none\"}};"
            + " procedure.before.antithrombotics",
        "\"procedure\":{\"before\":{\"antithrombotics\":[{}]}};"
            + " procedure.before.antithrombotics[0].drug",
        "\"procedure\":{\"before\":{\"antithrombotics\":[{\"drug\":\" \"}]}};"
            + " procedure.before.antithrombotics[0].drug",
        "\"procedure\":{\"before\":{\"antithrombotics\":[{\"drug\":\"x\",\"hoursSinceLastDose\":-1}]}};"
            + " procedure.before.antithrombotics[0].hoursSinceLastDose",
        "\"procedure\":{\"before\":{\"creatinineClearance\":{\"value\":30,\"unit\":\"mL\"}}};"
            + " procedure.before.creatinineClearance.unit",
        "\"procedure\":{\"before\":{\"creatinineClearance\":{\"value\":30,\"unit\":\"ml/minute\"}}};"
            + " procedure.before.creatinineClearance.unit",
        "\"procedure\":{\"before\":{\"creatinineClearance\":{\"value\":30}}};"
            + " procedure.before.creatinineClearance.unit",
        "\"procedure\":{\"before\":{\"plannedAt\":\"2031-03-02\"}}; procedure.before.plannedAt",
        "\"procedure\":{\"done\":{\"attempts\":1.5}}; procedure.done.attempts",
        "\"procedure\":{\"after\":{\"sent\":[{}]}}; procedure.after.sent[0].test",
        "\"procedure\":{\"after\":{\"headache\":{\"days\":[{\"day\":1}]}}};"
            + " procedure.after.headache.days[0].severity",
        "\"draws\":3; draws",
        "\"draws\":{\"csf\":{\"openingPressure\":17}}; draws.csf.openingPressure"
      })
  void read_wrongValue_isNotValidAtItsPlace(String members, String place) {
    assertThat(refused(members)).containsExactly(place);
  }

  @ParameterizedTest
  @CsvSource({
    "before, procedure.before.oops",
    "done, procedure.done.oops",
    "after, procedure.after.oops"
  })
  void read_unknownField_isKeptAndReported(String part, String place) {
    assertThat(understood("\"procedure\":{\"" + part + "\":{\"oops\":1}}").workup().problems())
        .extracting(Problem::place)
        .containsExactly(place);
  }
}
