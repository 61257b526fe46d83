package cistern.puncture.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.Facts;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PressureRangesTest {

  private static final PressureRanges RANGES = PressureRanges.of(Facts.standard());

  private static Done done(double pressure, Position position, Answer sedation) {
    return new Done(
        new ProcedureAnswers(Map.of(Question.SEDATION, sedation)),
        Optional.empty(),
        Optional.empty(),
        OptionalInt.empty(),
        position,
        OptionalDouble.of(pressure),
        Needle.UNKNOWN,
        List.of());
  }

  private static OpeningPressure check(double value, Position position, OptionalDouble age) {
    return RANGES.check(done(value, position, Answer.NO), Given.aged(age)).orElseThrow();
  }

  private static Verdict verdict(double value, Position position, String code, double age) {
    return check(value, position, OptionalDouble.of(age)).ranges().stream()
        .filter(r -> r.code().equals(code))
        .findFirst()
        .orElseThrow()
        .verdict();
  }

  /** 1 mmHg = 1.3595 cmH₂O; 1 cmH₂O = 0.7356 mmHg = 0.0981 kPa (conventional definitions). */
  @Test
  void check_conversions_areTheConventionalOnes() {
    OpeningPressure ten = check(10, Position.LATERAL, OptionalDouble.of(40));

    assertThat(ten.mmMercury()).isEqualTo(7.356, within(0.0005));
    assertThat(ten.kiloPascal()).isEqualTo(0.980665, within(1e-12));
    assertThat(check(13.595, Position.LATERAL, OptionalDouble.of(40)).mmMercury())
        .isEqualTo(10, within(0.0005));
    OutsideCheck.of(
            "Opening pressure in cmH2O, mmHg and kPa", "conventional definitions", "4 digits")
        .toTable("3 of 3 agree");
  }

  /** Lee and Lueck 2014: 6–25; Norager 2021: lateral 9.8–22.8; Avery 2010: children 11.5–28. */
  @ParameterizedTest
  @CsvSource({
    "5.9, LATERAL, adult-95, 40, BELOW",
    "6, LATERAL, adult-95, 40, WITHIN",
    "25, LATERAL, adult-95, 40, WITHIN",
    "25.1, LATERAL, adult-95, 40, ABOVE",
    "23, LATERAL, adult-lateral, 40, ABOVE",
    "22, SUPINE, adult-supine, 40, ABOVE",
    "28, LATERAL, child, 17.9, WITHIN",
    "28.1, LATERAL, child, 10, ABOVE",
    "19, LATERAL, adult-old-text, 18, ABOVE",
    "19, LATERAL, adult-review, 18, WITHIN"
  })
  void check_range_judgesByPositionAndAge(
      double value, Position position, String code, double age, Verdict verdict) {
    assertThat(verdict(value, position, code, age)).isEqualTo(verdict);
  }

  @ParameterizedTest
  @EnumSource(names = {"SITTING", "PRONE", "UNKNOWN"})
  void check_otherPosition_judgesNothingAndSaysWhy(Position position) {
    OpeningPressure pressure = check(40, position, OptionalDouble.of(40));

    assertThat(pressure.ranges())
        .extracting(OpeningPressure.RangeAnswer::verdict)
        .containsOnly(Verdict.UNDETERMINED);
    assertThat(pressure.notes()).isNotEmpty();
  }

  @Test
  void check_unknownAge_judgesNothing() {
    OpeningPressure pressure = check(40, Position.LATERAL, OptionalDouble.empty());

    assertThat(pressure.ranges())
        .extracting(OpeningPressure.RangeAnswer::verdict)
        .containsOnly(Verdict.UNDETERMINED);
    assertThat(pressure.notes()).anyMatch(n -> n.contains("age"));
  }

  /** ICHD-3 7.2: under 60 mm CSF. */
  @ParameterizedTest
  @CsvSource({"5.9, 1", "6, 0"})
  void check_lowPressure_isNamed(double value, int count) {
    assertThat(check(value, Position.LATERAL, OptionalDouble.of(40)).notes()).hasSize(count);
  }

  @ParameterizedTest
  @CsvSource({"YES, Sedation was given", "UNKNOWN, not recorded"})
  void check_sedation_isNamed(Answer sedation, String said) {
    assertThat(
            RANGES
                .check(done(20, Position.LATERAL, sedation), Given.aged(OptionalDouble.of(8)))
                .orElseThrow()
                .notes())
        .anyMatch(n -> n.contains(said));
  }

  @Test
  void check_noPressure_isEmpty() {
    assertThat(RANGES.check(Done.UNKNOWN, PuncturedPerson.UNKNOWN)).isEmpty();
  }
}
