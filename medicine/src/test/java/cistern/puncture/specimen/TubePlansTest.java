package cistern.puncture.specimen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.PunctureQuestion;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.TestOrder;
import cistern.puncture.procedure.TubeTemplate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class TubePlansTest {

  private static final Facts FACTS = Facts.standard();

  private static TubePlan plan(TestOrder order) {
    return TubePlans.of(FACTS).check(order, PuncturedPerson.UNKNOWN);
  }

  private static TestOrder order(double volume, CsfTest... tests) {
    return new TestOrder(
        Optional.empty(), List.of(tests), Optional.empty(), OptionalDouble.of(volume));
  }

  /** CSF is made at 0.3–0.4 mL/min (doi 10.5772/intechopen.99621); at 0.35: 12 mL 34, 30 mL 86. */
  @ParameterizedTest
  @CsvSource({"12, 34", "30, 86"})
  void minutes_ofAVolume_areThePrintedOnes(double ml, double printed) {
    TubePlan.Minutes minutes = TubePlans.of(FACTS).minutes(ml);

    assertThat(minutes.middle()).isEqualTo(printed, within(0.5));
    assertThat(minutes.least()).isEqualTo(ml / 0.4, within(1e-9));
    assertThat(minutes.most()).isEqualTo(ml / 0.3, within(1e-9));
    OutsideCheck.of(
            "Minutes until " + ml + " mL of CSF are made again",
            "doi 10.5772/intechopen.99621, arithmetic of the project's facts",
            "the printed minutes")
        .toTable("agrees");
  }

  @Test
  void check_nothingAsked_plansTheTestsForMs() {
    TubePlan plan = plan(TestOrder.UNKNOWN);

    assertThat(plan.question()).isEqualTo(PunctureQuestion.MS);
    assertThat(plan.ranked())
        .containsExactly(
            CsfTest.CELLS, CsfTest.BANDS, CsfTest.QUOTIENTS, CsfTest.KAPPA, CsfTest.CHEMISTRY);
    assertThat(plan.dropped()).isEmpty();
    assertThat(plan.volumes().totalMl()).isEqualTo(12, within(1e-9));
    assertThat(plan.dropFirst()).startsWith(CsfTest.CHEMISTRY);
    assertThat(plan.serum()).contains("same visit");
    assertThat(plan.label()).contains("two identifiers", "tests");
  }

  @ParameterizedTest
  @EnumSource(PunctureQuestion.class)
  void check_everyQuestion_fillsEveryTestThatItAsks(PunctureQuestion question) {
    TubePlan plan =
        plan(
            new TestOrder(
                Optional.of(question), List.of(), Optional.empty(), OptionalDouble.empty()));

    assertThat(plan.tubes().stream().flatMap(t -> t.tests().stream()))
        .containsExactlyInAnyOrderElementsOf(plan.ranked());
    assertThat(plan.tubes())
        .allSatisfy(t -> assertThat(t.ml()).isGreaterThanOrEqualTo(t.minimumMl()));
  }

  @ParameterizedTest
  @EnumSource(TubeTemplate.class)
  void check_everyTemplate_numbersTheTubesInItsOrder(TubeTemplate template) {
    TubePlan plan =
        plan(
            new TestOrder(
                Optional.empty(),
                List.of(CsfTest.values()),
                Optional.of(template),
                OptionalDouble.empty()));

    assertThat(plan.tubes()).extracting(Tube::order).isSorted().doesNotHaveDuplicates();
    String[] wanted = FACTS.word("tubes.order." + template.code()).split(",", -1);
    assertThat(plan.tubes().stream().flatMap(t -> t.tests().stream()).map(CsfTest::code))
        .containsExactly(wanted);
  }

  @Nested
  class WhenTheDrawIsShort {

    @Test
    void check_shortDraw_dropsTheLeastImportantFirst() {
      TubePlan plan = plan(order(1.6, CsfTest.BANDS, CsfTest.CELLS, CsfTest.KAPPA));

      assertThat(plan.dropped()).containsExactly(CsfTest.KAPPA);
      assertThat(plan.volumes().totalMl()).isEqualTo(1.6, within(1e-9));
      assertThat(plan.tubes().getFirst().tests()).containsExactly(CsfTest.CELLS);
    }

    @Test
    void check_nothingDrawn_dropsEverything() {
      TubePlan plan = plan(order(0, CsfTest.CELLS, CsfTest.BANDS));

      assertThat(plan.tubes()).isEmpty();
      assertThat(plan.dropped()).containsExactly(CsfTest.BANDS, CsfTest.CELLS);
    }

    @Test
    void check_volume_isNeverExceeded() {
      for (double volume = 0; volume < 40; volume += 0.7) {
        TubePlan plan = plan(order(volume, CsfTest.values()));
        assertThat(plan.volumes().totalMl()).isLessThanOrEqualTo(volume + 1e-9);
      }
    }

    @Test
    void check_testThatDoesNotFit_leavesRoomForSmallerOnes() {
      TubePlan plan = plan(order(5, CsfTest.TUBERCULOSIS_FUNGI, CsfTest.CELLS));

      assertThat(plan.dropped()).containsExactly(CsfTest.TUBERCULOSIS_FUNGI);
      assertThat(plan.tubes().getFirst().tests()).containsExactly(CsfTest.CELLS);
    }

    @Test
    void check_ranking_isThePersonsOwn() {
      assertThat(plan(order(0.6, CsfTest.KAPPA, CsfTest.BANDS)).dropped())
          .containsExactly(CsfTest.BANDS);
      assertThat(plan(order(0.6, CsfTest.BANDS, CsfTest.KAPPA)).dropped())
          .containsExactly(CsfTest.KAPPA);
    }

    @Test
    void check_moreThanWanted_isKeptAsReserve() {
      assertThat(plan(order(20, CsfTest.CELLS)).tubes().getLast().isReserve()).isTrue();
    }

    @Test
    void check_volumeDrawn_isUsedWhenNoneIsPlanned() {
      PuncturedPerson drawn =
          new PuncturedPerson(
              OptionalDouble.empty(),
              Optional.empty(),
              cistern.measurement.Answer.UNKNOWN,
              cistern.measurement.Answer.UNKNOWN,
              new PuncturedPerson.Draw(
                  Optional.empty(), OptionalDouble.of(2), Optional.empty(), Optional.empty()));

      assertThat(TubePlans.of(FACTS).check(TestOrder.UNKNOWN, drawn).volumes().availableMl())
          .contains(2.0);
    }
  }

  @Test
  void check_quotientsAlone_needWhatTheBandsNeed() {
    TubePlan plan = plan(order(5, CsfTest.QUOTIENTS));

    assertThat(plan.tubes().getFirst().ml()).isGreaterThan(0);
  }

  @Test
  void check_localTemplate_isUsed() {
    Facts local =
        FACTS.with(
            new Policy(
                "ward",
                Map.of(
                    "tubes.template",
                    new Policy.Change(new FactValue.Word("chemistry-first"), "ward rule"))));

    assertThat(
            TubePlans.of(local)
                .check(TestOrder.UNKNOWN, PuncturedPerson.UNKNOWN)
                .tubes()
                .getFirst())
        .extracting(Tube::tests)
        .isEqualTo(List.of(CsfTest.CHEMISTRY));
  }

  @Test
  void production_ofTheFluid_namesItsSource() {
    assertThat(TubePlans.of(FACTS).production().sources()).isNotEmpty();
  }
}
