package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DifferentialTest {

  private static final Facts FACTS = Facts.standard();
  private static final Prior PRIOR = new Prior(0.5, 0.5, Answer.NO);
  private static final Observations HEARD =
      new Observations(
          List.of(
              new Observation(Trait.BANDS, true),
              new Observation(Trait.KAPPA_INDEX, true),
              new Observation(Trait.LEUKOCYTES, true)));

  private static DifferentialResult result(Probability probability) {
    return Differential.of(FACTS).interpret(HEARD, Optional.of(PRIOR), probability);
  }

  private static Probability given() {
    return Probabilities.of(FACTS)
        .given(CohortContext.MRI_NOT_USED, PRIOR, HEARD.heard().getFirst(), List.of("lactate"));
  }

  private static Probability none() {
    return Probability.none(
        Probability.Status.OUTSIDE_DOMAIN, Optional.empty(), Optional.of(PRIOR), "why");
  }

  @Test
  void interpret_given_onlyBandsMoveTheNumber() {
    DifferentialResult result = result(given());

    assertThat(result.weights()).filteredOn(Weight::isCounted).hasSize(1);
    assertThat(result.weights().getFirst().factor()).isBetween(1.8, 2.0);
    assertThat(result.weights().getFirst().interval95()).isPresent();
    assertThat(result.weights().getLast().note())
        .contains("not counted: no cohort shows that it adds to bands");
    assertThat(result.weights().getLast().factor()).isEqualTo(1);
    assertThat(result.assumptions())
        .anyMatch(a -> a.contains("10 cohorts of 565 people"))
        .anyMatch(a -> a.contains("lactate"));
  }

  @Test
  void interpret_noNumber_reasonsStayAndNothingIsWeighed() {
    DifferentialResult result = result(none());

    assertThat(result.weights()).noneMatch(Weight::isCounted);
    assertThat(result.assumptions()).isEmpty();
    assertThat(result.arguments())
        .extracting(a -> a.disease().code())
        .contains("ms", "mogad", "neuro-behcet");
    assertThat(none().logOdds()).isEmpty();
  }

  /** 8 of 74 with bands in parenchymal neuro-Behçet (PMID 23558092): they speak against it. */
  @Test
  void arguments_countsOfADisease_speakForOrAgainst() {
    Argument behcet =
        result(none()).arguments().stream()
            .filter(a -> a.disease() == Disease.NEURO_BEHCET)
            .findFirst()
            .orElseThrow();

    assertThat(behcet.reasonsAgainst().getFirst()).contains("found in 11 % (6 to 20 %) of 74");
    assertThat(behcet.reasonsFor()).isEmpty();
    assertThat(behcet.grounds().sources()).anyMatch(s -> s.contains("23558092"));
  }

  @Test
  void given_contextWithoutCalibration_hasNoNumber() {
    Probability none =
        Probabilities.of(FACTS)
            .given(CohortContext.MRI_USED_NO_DIS, PRIOR, HEARD.heard().getFirst(), List.of());

    assertThat(none.status()).isEqualTo(Probability.Status.NOT_CALIBRATED);
    assertThat(none.given()).isEmpty();
    assertThat(none.reason().orElseThrow()).contains("held out");
  }

  @Test
  void given_kappaAlone_saysThatItStandsForBands() {
    Probability kappa =
        Probabilities.of(FACTS)
            .given(
                CohortContext.MRI_USED_DIS,
                PRIOR,
                new Observation(Trait.KAPPA_INDEX, false),
                List.of());

    assertThat(result(kappa).assumptions())
        .anyMatch(a -> a.contains("κ index stands in their place"))
        .anyMatch(a -> a.contains("2 adjusted estimates of 1462 people"));
  }
}
