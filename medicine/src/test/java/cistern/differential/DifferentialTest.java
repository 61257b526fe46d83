package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.fact.Status;
import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class DifferentialTest {

  private static final Facts FACTS = Facts.standard();
  private static final Differential DIFFERENTIAL = Differential.of(FACTS);

  private static Observations heard(Object... words) {
    List<Observation> all = new ArrayList<>();
    for (int i = 0; i < words.length; i += 2) {
      all.add(new Observation((Trait) words[i], (Boolean) words[i + 1]));
    }
    return new Observations(all);
  }

  private static Optional<Prior> prior(double low, double high) {
    return Optional.of(new Prior(low, high, Answer.NO));
  }

  private static DifferentialResult result(Observations heard, Optional<Prior> prior) {
    return DIFFERENTIAL.interpret(heard, prior, false);
  }

  private static double logOdds(Observations heard) {
    return result(heard, Optional.empty()).weightsOfMs().stream()
        .mapToDouble(Weight::logOdds)
        .sum();
  }

  @Nested
  class Published {

    /** Simonsen 2020, n = 842: margins 76.7 and 93.3 %, φ 0.44, both negative 0.0618. */
    @Test
    void jointTable_simonsen_marginsReproduce() {
      double both = FACTS.number("count.ms.igg-index.bands-positive.simonsen-2020.positive");
      double withBands = FACTS.number("count.ms.igg-index.bands-positive.simonsen-2020.of");
      double indexOnly = FACTS.number("count.ms.igg-index.bands-negative.simonsen-2020.positive");
      double withoutBands = FACTS.number("count.ms.igg-index.bands-negative.simonsen-2020.of");
      double all = withBands + withoutBands;
      double neither = withoutBands - indexOnly;
      double index = both + indexOnly;
      double phi =
          (both * neither - (withBands - both) * indexOnly)
              / Math.sqrt(withBands * withoutBands * index * (all - index));

      assertThat(all).isEqualTo(842);
      assertThat(withBands / all).isCloseTo(0.933, within(0.0006));
      assertThat(index / all).isCloseTo(0.767, within(0.0006));
      assertThat(neither / all).isCloseTo(0.0618, within(0.00005));
      assertThat(phi).isCloseTo(0.44, within(0.005));
      OutsideCheck.of(
              "Joint table of IgG index and bands in MS: margins, φ, both negative",
              "Simonsen 2020, doi 10.1177/2055217319901291",
              "as printed")
          .toTable("4 of 4 agree");
    }

    /** Innsbruck, n = 213: 147, 33, 1, 32; φ 0.62; 34 of 213 discordant. */
    @Test
    void jointTable_innsbruck_marginsReproduce() {
      double both = FACTS.number("count.any.kappa-index.bands-positive.innsbruck.positive");
      double withBands = FACTS.number("count.any.kappa-index.bands-positive.innsbruck.of");
      double kappaOnly = FACTS.number("count.any.kappa-index.bands-negative.innsbruck.positive");
      double neither = 32;

      assertThat(both + (withBands - both) + kappaOnly + neither).isEqualTo(213);
      assertThat((kappaOnly + withBands - both) / 213).isCloseTo(0.16, within(0.005));
      OutsideCheck.of(
              "Joint table of κ index and bands: total and discordance",
              "Innsbruck real-world series, n = 213",
              "as printed")
          .toTable("213; 16 % agree");
    }

    /**
     * Bands after imaging: LR+ 1.38 and LR− 0.24 for conversion (doi 10.1371/journal.pone.0088680).
     */
    @Test
    void likelihoodRatio_conversion_asDerived() {
      LikelihoodRatio ratio = new LikelihoodRatio(new Proportion(35, 38), new Proportion(26, 39));

      assertThat(ratio.positive()).isCloseTo(1.381579, within(1e-6));
      assertThat(ratio.negative()).isCloseTo(0.236842, within(1e-6));
    }
  }

  @Nested
  class OneWitness {

    @Test
    void bandsKappaAndIndex_allPositive_noMoreThanBands() {
      double bands = logOdds(heard(Trait.BANDS, true));
      double all =
          logOdds(heard(Trait.BANDS, true, Trait.KAPPA_INDEX, true, Trait.IGG_INDEX, true));
      double kappaAlone = logOdds(heard(Trait.KAPPA_INDEX, true));

      assertThat(all).isCloseTo(bands, within(0.05));
      assertThat(kappaAlone).isPositive().isLessThan(bands);
    }

    @Test
    void kappaAndIndex_withoutBands_lessThanTheirSum() {
      double kappa = logOdds(heard(Trait.KAPPA_INDEX, true));
      double index = logOdds(heard(Trait.IGG_INDEX, true));
      double both = logOdds(heard(Trait.KAPPA_INDEX, true, Trait.IGG_INDEX, true));

      assertThat(both).isLessThan(0.8 * (kappa + index));
      assertThat(both).isLessThanOrEqualTo(logOdds(heard(Trait.BANDS, true)) + 1e-9);
    }

    @Test
    void weights_ofTheWitness_carryItsName() {
      assertThat(Trait.BANDS.witness())
          .isEqualTo(Trait.KAPPA_INDEX.witness())
          .isEqualTo(Trait.IGG_INDEX.witness())
          .isNotEqualTo(Trait.MRZ_REACTION.witness());
    }
  }

  @Nested
  class WithoutPrior {

    @Test
    void interpret_noPrior_noPosteriorButWeights() {
      DifferentialResult result = result(heard(Trait.BANDS, true), Optional.empty());

      assertThat(result.posteriors()).isEmpty();
      assertThat(result.weightsOfMs()).hasSize(1);
      assertThat(result.assumptions()).anyMatch(a -> a.contains("No probability before"));
    }
  }

  @Nested
  class Laws {

    private Observations random(Random random) {
      List<Observation> all = new ArrayList<>();
      for (Trait trait : Trait.values()) {
        if (random.nextBoolean()) {
          all.add(new Observation(trait, random.nextBoolean()));
        }
      }
      return new Observations(all);
    }

    @Test
    void posteriors_anyObservations_sumToOneInsideTheirIntervals() {
      Random random = new Random(1);
      for (int run = 0; run < 60; run++) {
        double low = random.nextDouble() * 0.9;
        DifferentialResult result = result(random(random), prior(low, low + 0.1));

        assertThat(result.posteriors().stream().mapToDouble(Posterior::probability).sum())
            .isCloseTo(1, within(1e-12));
        assertThat(result.posteriors())
            .allSatisfy(
                p -> {
                  assertThat(p.probability())
                      .isBetween(p.interval95().lower(), p.interval95().upper());
                  assertThat(p.interval95().lower()).isBetween(0.0, 1.0);
                  assertThat(p.interval95().upper()).isBetween(0.0, 1.0);
                });
      }
    }

    @Test
    void posterior_ofMs_isPriorOddsTimesWeights() {
      Random random = new Random(2);
      for (int run = 0; run < 60; run++) {
        Observations heard = random(random);
        double point = 0.05 + 0.9 * random.nextDouble();
        DifferentialResult result = result(heard, prior(point, point));
        double moved = result.weightsOfMs().stream().mapToDouble(Weight::logOdds).sum();

        assertThat(result.posterior(Disease.MS).orElseThrow().probability())
            .isCloseTo(Odds.probabilityAfter(point, moved), within(1e-12));
      }
    }

    @Test
    void posterior_higherPrior_higher() {
      Observations heard = heard(Trait.BANDS, false, Trait.LEUKOCYTES, true);
      double before = 0;
      for (double point = 0.1; point < 1; point += 0.1) {
        double now =
            result(heard, prior(point, point)).posterior(Disease.MS).orElseThrow().probability();
        assertThat(now).isGreaterThan(before);
        before = now;
      }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1})
    void posterior_certainPrior_stays(double point) {
      assertThat(
              result(heard(Trait.BANDS, false), prior(point, point))
                  .posterior(Disease.MS)
                  .orElseThrow()
                  .probability())
          .isEqualTo(point);
    }

    @Test
    void interval_widerPrior_wider() {
      Observations heard = heard(Trait.BANDS, true);
      Proportion.Ends narrow =
          result(heard, prior(0.45, 0.45)).posterior(Disease.MS).orElseThrow().interval95();
      Proportion.Ends wide =
          result(heard, prior(0.1, 0.8)).posterior(Disease.MS).orElseThrow().interval95();

      assertThat(wide.lower()).isLessThan(narrow.lower());
      assertThat(wide.upper()).isGreaterThan(narrow.upper());
    }

    @Test
    void interpret_twice_same() {
      Observations heard = heard(Trait.BANDS, true, Trait.MRZ_REACTION, false);

      assertThat(result(heard, prior(0.2, 0.5))).isEqualTo(result(heard, prior(0.2, 0.5)));
    }

    @Test
    void bands_found_raiseMsAndMissedLowerIt() {
      assertThat(logOdds(heard(Trait.BANDS, true))).isPositive();
      assertThat(logOdds(heard(Trait.BANDS, false))).isNegative();
      assertThat(logOdds(heard(Trait.MOG_IGG, true))).isNegative();
      assertThat(logOdds(heard(Trait.LEUKOCYTES_HIGH, true))).isNegative();
    }

    @ParameterizedTest
    @EnumSource(Trait.class)
    void outcome_anyTrait_informationIsNotNegativeAndShiftsBalance(Trait trait) {
      Outcome outcome = DIFFERENTIAL.outcome(heard(), prior(0.4, 0.4), trait);

      assertThat(outcome.information()).isNotNegative();
      assertThat(
              outcome.chanceFound() * outcome.msIfFound()
                  + (1 - outcome.chanceFound()) * outcome.msIfNot())
          .isCloseTo(outcome.msNow(), within(1e-12));
      assertThat(outcome.expectedShift()).isBetween(0.0, 1.0);
    }

    @Test
    void outcomeOfRepeat_afterNoBands_rarelyGains() {
      Outcome repeat = DIFFERENTIAL.outcomeOfRepeat(heard(Trait.BANDS, false), prior(0.4, 0.4));

      assertThat(repeat.chanceFound()).isBetween(0.02, 0.12);
    }
  }

  @Nested
  class Imaging {

    @ParameterizedTest
    @EnumSource(Answer.class)
    void prior_thatUsesMri_bandsMoveLess(Answer usesMri) {
      double plain = logOdds(heard(Trait.BANDS, true));
      double moved =
          result(heard(Trait.BANDS, true), Optional.of(new Prior(0.4, 0.4, usesMri)))
              .weightsOfMs()
              .getFirst()
              .logOdds();

      if (usesMri == Answer.NO) {
        assertThat(moved).isEqualTo(plain);
      } else {
        assertThat(moved).isLessThan(plain);
      }
    }
  }

  @Nested
  class Rows {

    @Test
    void posteriors_onlyDiseasesWithTwoSupportedRows() {
      List<Series> series = Series.all(FACTS);
      for (Posterior posterior : result(heard(Trait.BANDS, true), prior(0.4, 0.4)).posteriors()) {
        assertThat(Beliefs.supported(posterior.disease(), series))
            .as(posterior.disease().code())
            .isGreaterThanOrEqualTo(2);
      }
    }

    @Test
    void arguments_fewRows_forAndAgainst() {
      DifferentialResult missed = result(heard(Trait.BANDS, false), prior(0.4, 0.4));
      Argument behcet =
          missed.arguments().stream()
              .filter(a -> a.disease() == Disease.NEURO_BEHCET)
              .findFirst()
              .orElseThrow();

      assertThat(behcet.reasonsFor()).singleElement().asString().contains("11 % (6 to 20 %) of 74");
      assertThat(behcet.grounds().sources()).anyMatch(s -> s.contains("23558092"));
      assertThat(missed.posterior(Disease.NEURO_BEHCET)).isEmpty();
    }

    @Test
    void grounds_recalledRow_memory() {
      DifferentialResult result = result(heard(Trait.BANDS, true), prior(0.4, 0.4));

      assertThat(result.posterior(Disease.NEUROSARCOIDOSIS).orElseThrow().grounds().status())
          .isEqualTo(Status.MEMORY);
    }

    @Test
    void split_ofTheRest_sumsToOne() {
      assertThat(
              result(heard(), Optional.empty()).split().values().stream().mapToDouble(d -> d).sum())
          .isCloseTo(1, within(1e-12));
    }
  }

  @Nested
  class SaidByTheTrade {

    @Test
    void practice_bands_besidePrediction() {
      assertThat(result(heard(Trait.BANDS, true), Optional.empty()).practice())
          .extracting(PracticeCompared::text)
          .anyMatch(t -> t.contains("90 % of multiple sclerosis"))
          .anyMatch(t -> t.contains("20 % to 30 % of neuromyelitis"))
          .anyMatch(t -> t.contains("within about 6 months"))
          .anyMatch(t -> t.contains("usually no bands"))
          .allMatch(t -> t.startsWith("Common practice, no source"));
      assertThat(result(heard(), Optional.empty()).practice()).isEmpty();
    }

    @Test
    void practice_alikeBands_lowersWithoutExcluding() {
      assertThat(DIFFERENTIAL.interpret(heard(), Optional.empty(), true).practice())
          .singleElement()
          .satisfies(
              p -> assertThat(p.text()).contains("often insignificant", "do not rule it out"));
    }

    @Test
    void practice_countsOutsideTheHabit_differenceStatedAndCountsUsed() {
      assertThat(result(heard(Trait.BANDS, true), Optional.empty()).practice())
          .filteredOn(PracticeCompared::isDifferent)
          .singleElement()
          .satisfies(
              p ->
                  assertThat(p.text())
                      .contains("20 % to 30 % of neuromyelitis")
                      .contains(
                          "predict 16 % (10 % to 24 %): they differ, and the counts are used"));
    }

    @Test
    void practice_contradictedByCounts_saysSo() {
      Facts changed =
          FACTS.with(
              new Policy(
                  "test",
                  Map.of(
                      "practice.nmosd.bands.low",
                      new Policy.Change(new FactValue.Figure(0.8), "test"),
                      "practice.nmosd.bands.high",
                      new Policy.Change(new FactValue.Figure(0.9), "test"))));

      assertThat(
              Differential.of(changed)
                  .interpret(heard(Trait.BANDS, true), Optional.empty(), false)
                  .practice())
          .filteredOn(PracticeCompared::isDifferent)
          .singleElement()
          .satisfies(p -> assertThat(p.text()).contains("they differ, and the counts are used"));
    }
  }
}
