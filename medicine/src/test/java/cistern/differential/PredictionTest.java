package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the model predicts against what published cohorts found. A cohort that is not among the
 * counts is held out. A prediction that misses stays in the table and says so.
 */
class PredictionTest {

  private static final Differential DIFFERENTIAL = Differential.of(Facts.standard());
  private static final double LEVEL = 0.95;

  @Nested
  class Published {

    static List<Rated> rates() {
      return List.of(
          new Rated("ms", "bands", Trait.BANDS, 0.91, "Denmark 2026, MS, held out"),
          new Rated(
              "ms",
              "bands",
              Trait.BANDS,
              0.911,
              "doi 10.1371/journal.pone.0182647, PPMS, held out"),
          new Rated(
              "ms", "bands", Trait.BANDS, 0.82, "Leurs 2020, PMC7350201, CIS and MS, held out"),
          new Rated("other", "bands", Trait.BANDS, 0.10, "Denmark 2026, other diseases, held out"),
          new Rated(
              "other",
              "bands",
              Trait.BANDS,
              0.08,
              "Can J Neurol Sci 1980;7:275, 36 of 450, held out"),
          new Rated("mogad", "bands", Trait.BANDS, 0.168, "PMID 39812323, among the counts"),
          new Rated(
              "neuroborreliosis", "bands", Trait.BANDS, 0.703, "Djukic 2012, among the counts"),
          new Rated(
              "autoimmune-encephalitis",
              "bands",
              Trait.BANDS,
              0.455,
              "PMC8019787, among the counts"),
          new Rated(
              "any", "kappa-index.bands-positive", Trait.KAPPA_INDEX, 0.97, "PMC9687331, held out"),
          new Rated("ms", "leukocytes", Trait.LEUKOCYTES, 0.40, "PMC6624148, among the counts"));
    }

    /** Rates: the model's 95 % interval against the published share; all from differential.md. */
    @ParameterizedTest
    @MethodSource("rates")
    void rate_predicted_againstTheCohort(Rated cohort) {
      CountTable table = table(cohort.group(), cohort.rate(), cohort.heard());
      double share = cohort.share();
      boolean isSeen = table.interval95().lower() <= share && share <= table.interval95().upper();

      assertThat(isSeen).as("%s in %s", share, table).isTrue();
      OutsideCheck.of(
              "Predicted share with %s: %s".formatted(table.term(), cohort.group()),
              cohort.name(),
              "inside the 95 % interval of the prediction")
          .toTable(
              "predicted %.0f %% (%.0f to %.0f), published %.0f %%: %s"
                  .formatted(
                      100 * table.mean(),
                      100 * table.interval95().lower(),
                      100 * table.interval95().upper(),
                      100 * share,
                      isSeen ? "inside" : "outside"));
    }

    static List<Conversion> conversions() {
      String firstCohort = "doi 10.1371/journal.pone.0088680";
      String secondCohort = "CIS, oligoclonal bands and MS, n = 82";
      return List.of(
          new Conversion(
              true, new Proportion(35, 35 + 26), new Proportion(38, 77), firstCohort, true),
          new Conversion(
              false, new Proportion(3, 3 + 13), new Proportion(38, 77), firstCohort, true),
          new Conversion(
              true, new Proportion(42.8, 42.8 + 14), new Proportion(63, 82), secondCohort, false),
          new Conversion(
              false, new Proportion(20.2, 20.2 + 5), new Proportion(63, 82), secondCohort, false));
    }

    /**
     * Conversion to MS after a first attack, by bands, with the cohort's own share as the prior: 38
     * of 77 converted, bands in 35 of 38 and 26 of 39 (doi 10.1371/journal.pone.0088680); 63 of 82
     * converted, bands in 68.0 and 73.7 % ("CIS, oligoclonal bands and MS", rebuilt).
     */
    @ParameterizedTest
    @MethodSource("conversions")
    void posterior_firstAttack_againstTheCohort(Conversion cohort) {
      double prior = cohort.all().share();
      Posterior ofMs =
          DIFFERENTIAL
              .interpret(
                  new Observations(List.of(new Observation(Trait.BANDS, cohort.isWith()))),
                  Optional.of(new Prior(prior, prior, Answer.YES)),
                  false)
              .posterior(Disease.MS)
              .orElseThrow();
      Proportion seen = cohort.converted();
      Proportion.Ends ends = seen.wilson(LEVEL);
      boolean isSeen =
          ofMs.interval95().lower() <= ends.upper() && ends.lower() <= ofMs.interval95().upper();

      assertThat(isSeen).as("%s against %s", ofMs, ends).isEqualTo(cohort.isCovered());
      OutsideCheck.of(
              "Predicted conversion to MS %s bands, prior %.0f %%"
                  .formatted(cohort.isWith() ? "with" : "without", 100 * prior),
              cohort.name(),
              "95 % intervals overlap")
          .toTable(
              "predicted %.0f %% (%.0f to %.0f), found %.0f %% (%.0f to %.0f): %s"
                  .formatted(
                      100 * ofMs.probability(),
                      100 * ofMs.interval95().lower(),
                      100 * ofMs.interval95().upper(),
                      100 * seen.share(),
                      100 * ends.lower(),
                      100 * ends.upper(),
                      isSeen ? "overlap" : "no overlap"));
    }
  }

  /** A share that a cohort found, and the rate that predicts it. */
  record Rated(String group, String rate, Trait heard, double share, String name) {}

  /**
   * A cohort after a first attack.
   *
   * @param isWith with bands, or without
   * @param converted who of these converted
   * @param all who of the whole cohort did
   * @param name the cohort
   * @param isCovered whether the prediction fits
   */
  record Conversion(
      boolean isWith, Proportion converted, Proportion all, String name, boolean isCovered) {}

  private static CountTable table(String group, String rate, Trait heard) {
    return DIFFERENTIAL
        .interpret(new Observations(List.of(new Observation(heard, true))), Optional.empty(), false)
        .counts()
        .stream()
        .filter(t -> t.group().equals(group) && t.rate().equals(rate))
        .findFirst()
        .orElseThrow();
  }
}
