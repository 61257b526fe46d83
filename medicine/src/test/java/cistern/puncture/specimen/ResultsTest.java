package cistern.puncture.specimen;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.After.SentTest;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.PuncturedPerson;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResultsTest {

  private static final OffsetDateTime SENT = OffsetDateTime.parse("2031-03-02T11:00:00Z");
  private static final Results RESULTS = Results.of(Facts.standard());

  private static SentTest sent(CsfTest test) {
    return new SentTest(
        test, Optional.of(SENT), Optional.empty(), Optional.empty(), Answer.UNKNOWN, List.of());
  }

  private static After after(Optional<OffsetDateTime> asOf, SentTest... tests) {
    return new After(asOf, Optional.empty(), List.of(tests), Optional.empty());
  }

  private static Outstanding.State state(SentTest test, OffsetDateTime asOf) {
    return RESULTS.outstanding(after(Optional.of(asOf), test)).getFirst().state();
  }

  private static PuncturedPerson measured(Optional<Interval> glucose, Optional<Interval> cells) {
    return new PuncturedPerson(
        OptionalDouble.empty(),
        Optional.empty(),
        Answer.UNKNOWN,
        Answer.UNKNOWN,
        new PuncturedPerson.Draw(Optional.empty(), OptionalDouble.empty(), glucose, cells));
  }

  private static List<CriticalValue> critical(double glucose, After after) {
    return RESULTS.critical(
        after, measured(Optional.of(Interval.of(glucose)), Optional.empty()).draw());
  }

  /** Culture 5 d = 120 h (a hospital laboratory's handbook, L5). */
  @ParameterizedTest
  @CsvSource({"120, OUTSTANDING", "121, OVERDUE"})
  void outstanding_culture_isOverdueAfterItsTurnaround(int hours, Outstanding.State state) {
    assertThat(state(sent(CsfTest.CULTURE), SENT.plusHours(hours))).isEqualTo(state);
  }

  @Test
  void outstanding_promisedTime_winsOverTheTurnaround() {
    SentTest promised =
        new SentTest(
            CsfTest.CULTURE,
            Optional.of(SENT),
            Optional.of(SENT.plusHours(10)),
            Optional.empty(),
            Answer.UNKNOWN,
            List.of());

    assertThat(state(promised, SENT.plusHours(11))).isEqualTo(Outstanding.State.OVERDUE);
  }

  @Test
  void outstanding_received_isReceived() {
    SentTest received =
        new SentTest(
            CsfTest.CELLS,
            Optional.of(SENT),
            Optional.empty(),
            Optional.of(SENT.plusHours(1)),
            Answer.NO,
            List.of());

    assertThat(state(received, SENT.plusDays(30))).isEqualTo(Outstanding.State.RECEIVED);
  }

  @Test
  void outstanding_withoutATimeOrTurnaround_isUnknown() {
    assertThat(RESULTS.outstanding(after(Optional.empty(), sent(CsfTest.CELLS))).getFirst())
        .satisfies(o -> assertThat(o.state()).isEqualTo(Outstanding.State.UNKNOWN))
        .satisfies(o -> assertThat(o.dueAt()).contains(SENT.plusHours(4)));
    assertThat(state(sent(CsfTest.CYTOLOGY), SENT.plusDays(90)))
        .isEqualTo(Outstanding.State.UNKNOWN);
  }

  /** A hospital laboratory's handbook (L16): ≤ 2.2 or ≥ 16.7 mmol/L. */
  @ParameterizedTest
  @CsvSource({"2.2, 1", "2.21, 0", "16.69, 0", "16.7, 1"})
  void critical_glucose_isCriticalAtBothLimits(double glucose, int count) {
    assertThat(critical(glucose, after(Optional.empty()))).hasSize(count);
  }

  /** A bound is critical only when every value under it is. */
  @ParameterizedTest
  @CsvSource({"0, 1.1, 1", "0, 3, 0", "20, 1000, 1"})
  void critical_bound_isCriticalWhenAllOfItIs(double lower, double upper, int count) {
    PuncturedPerson bounded =
        measured(Optional.of(new Interval(lower, upper, true)), Optional.empty());

    assertThat(RESULTS.critical(after(Optional.empty()), bounded.draw())).hasSize(count);
  }

  @Test
  void critical_nobodyTold_isUntold() {
    assertThat(critical(1.5, after(Optional.empty(), sent(CsfTest.CHEMISTRY))).getFirst())
        .satisfies(c -> assertThat(c.isUntold()).isTrue())
        .satisfies(c -> assertThat(c.text()).contains("1.5 mmol/L"));
  }

  /** A hospital's policy (L17): told within 30 min of the result. */
  @ParameterizedTest
  @CsvSource({"30, within 30 min", "31, later than 30 min"})
  void critical_told_showsTheDelay(int minutes, String said) {
    SentTest told =
        new SentTest(
            CsfTest.CHEMISTRY,
            Optional.of(SENT),
            Optional.empty(),
            Optional.of(SENT.plusHours(1)),
            Answer.UNKNOWN,
            List.of(
                new Told("ward doctor", Optional.of(SENT.plusHours(1).plusMinutes(minutes))),
                new Told("nurse", Optional.empty())));

    CriticalValue value = critical(1.5, after(Optional.empty(), told)).getFirst();

    assertThat(value.told().getFirst().delay()).endsWith(said);
    assertThat(value.told().getLast().delay()).isEmpty();
  }

  @Test
  void critical_positiveCulture_isNamed() {
    SentTest positive =
        new SentTest(
            CsfTest.CULTURE,
            Optional.of(SENT),
            Optional.empty(),
            Optional.empty(),
            Answer.YES,
            List.of());

    assertThat(RESULTS.critical(after(Optional.empty(), positive), PuncturedPerson.UNKNOWN.draw()))
        .extracting(CriticalValue::text)
        .containsExactly("positive: Gram stain and culture");
  }

  @Test
  void critical_cells_haveNoLimitUntilTheClinicSetsOne() {
    PuncturedPerson many = measured(Optional.empty(), Optional.of(Interval.of(3000)));
    Facts local =
        Facts.standard()
            .with(
                new Policy(
                    "ward",
                    Map.of(
                        "critical.leukocytes.upper",
                        new Policy.Change(new FactValue.Figure(1000), "ward list"))));

    assertThat(RESULTS.critical(after(Optional.empty()), many.draw())).isEmpty();
    assertThat(Results.of(local).critical(after(Optional.empty()), many.draw()))
        .extracting(CriticalValue::text)
        .containsExactly("leukocytes 3000/µL (1000 or over)");
  }
}
