package cistern.followup;

import static cistern.followup.Built.FACTS;
import static cistern.followup.Built.built;
import static cistern.followup.Built.change;
import static cistern.followup.Built.compare;
import static cistern.followup.Built.remarks;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.analysis.Puncture;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparisonsTest {

  @Nested
  class Values {

    /** Default cv 5 % of a quotient: σ² = 2 ln(1.0025) at each puncture, limits +21.6/−17.8 %. */
    @ParameterizedTest
    @CsvSource({
      "220, WITHIN_VARIATION",
      "266, WITHIN_VARIATION",
      "269, SIGNIFICANT",
      "180, SIGNIFICANT"
    })
    void compare_albuminQuotient_isHeldAgainstItsLimit(double later, Change.Verdict verdict) {
      Comparison both = compare(built("a", 0), new Built("b", 90).panel(later, 62));
      double spread = 1.96 * Math.sqrt(4 * Math.log(1.0025));

      Change quotient = change(both, "albumin-quotient");

      assertThat(quotient.verdict()).isEqualTo(verdict);
      assertThat(quotient.limits().orElseThrow().up())
          .isEqualTo(Math.exp(spread) - 1, within(1e-12));
      assertThat(both.days()).hasValue(90);
    }

    @Test
    void compare_swapped_turnsOnlyTheDirection() {
      Change one = change(compare(built("a", 0), new Built("b", 9).panel(400, 62)), "albumin.csf");
      Change other =
          change(compare(new Built("a", 0).panel(400, 62), built("b", 9)), "albumin.csf");

      assertThat(one.verdict()).isEqualTo(other.verdict());
      assertThat(one.limits()).isEqualTo(other.limits());
      assertThat(one.from()).isEqualTo(other.to());
    }

    @Test
    void compare_biologicalVariationFromPolicy_widensTheLimits() {
      Facts local =
          FACTS.with(
              new Policy(
                  "ward",
                  Map.of(
                      "change.biological.albumin.csf",
                      new Policy.Change(new FactValue.Figure(0.2), "ward study"))));
      List<Puncture> both =
          List.of(built("a", 0).puncture(), new Built("b", 9).panel(300, 62).puncture());

      Comparison wide = Comparisons.of(local).compare(both);

      assertThat(change(wide, "albumin.csf").verdict()).isEqualTo(Change.Verdict.WITHIN_VARIATION);
      assertThat(change(Comparisons.of(FACTS).compare(both), "albumin.csf").verdict())
          .isEqualTo(Change.Verdict.SIGNIFICANT);
    }

    @Test
    void compare_clippedValue_hasNoLimit() {
      Change fraction =
          change(compare(built("a", 0), built("b", 9)), FindingCode.IGG_FRACTION.code());

      assertThat(fraction.verdict()).isEqualTo(Change.Verdict.NOT_COMPARABLE);
      assertThat(fraction.note()).contains("no limit of change");
    }

    @Test
    void compare_cellsWithoutImprecision_doNotCompare() {
      Built first = built("a", 0).with(Sample.csf(Analyte.LEUKOCYTES), 30);
      Built second = built("b", 60).with(Sample.csf(Analyte.LEUKOCYTES), 2);

      Comparison both = compare(first, second);

      assertThat(change(both, "leukocytes").note()).contains("no imprecision");
      assertThat(remarks(both)).contains("code=transient", "passing illness");
    }

    @Test
    void compare_censoredValue_doesNotCompare() {
      Sample kappa = Sample.csf(Analyte.KAPPA);
      Built first = built("a", 0).with(kappa, Interval.below(0.3), Optional.of("nephelometry"));

      assertThat(change(compare(first, built("b", 9).with(kappa, 5)), "kappa-flc.csf").note())
          .contains("only a bound");
    }

    @Test
    void compare_zero_hasNoRelativeChange() {
      Sample kappa = Sample.csf(Analyte.KAPPA);

      assertThat(
              change(
                      compare(built("a", 0).with(kappa, 0), built("b", 9).with(kappa, 5)),
                      "kappa-flc.csf")
                  .note())
          .contains("not positive");
    }

    @Test
    void compare_measuredOnce_doesNotCompare() {
      assertThat(
              change(
                      compare(built("a", 0), built("b", 9).with(Sample.csf(Analyte.LACTATE), 1.8)),
                      "lactate")
                  .note())
          .contains("one puncture only");
    }

    @Test
    void compare_antibodyIndex_takesItsIntervalOrSaysSo() {
      Built[] both = {built("a", 0), built("b", 9)};
      for (Built each : both) {
        each.with(Sample.csf(Analyte.MEASLES_IGG), 20)
            .with(Sample.serum(Analyte.MEASLES_IGG), 1000);
      }
      Change index = change(compare(both), "measles-antibody-index");

      assertThat(index.limits().isPresent() || index.note().contains("interval")).isTrue();
    }
  }

  @Nested
  class WhenSomethingDiffers {

    @Test
    void compare_changedAssay_doesNotCompareAndNamesBoth() {
      Built later =
          built("b", 9)
              .with(Sample.csf(Analyte.ALBUMIN), Interval.of(500), Optional.of("turbidimetry"));

      Change change = change(compare(built("a", 0), later), "igg-index");

      assertThat(change.verdict()).isEqualTo(Change.Verdict.NOT_COMPARABLE);
      assertThat(change.note()).contains("nephelometry", "turbidimetry");
    }

    @Test
    void compare_unstatedAssay_isKeptInMind() {
      Built later =
          built("b", 9).with(Sample.csf(Analyte.ALBUMIN), Interval.of(500), Optional.empty());

      assertThat(change(compare(built("a", 0), later), "albumin-quotient"))
          .satisfies(c -> assertThat(c.verdict()).isEqualTo(Change.Verdict.SIGNIFICANT))
          .satisfies(c -> assertThat(c.note()).contains("assay is not stated"));
    }

    /** A trace of blood is another number on another platform. */
    @Test
    void compare_bloodAlone_onlyWhereBothAssaysAreNamedAlike() {
      Sample light = Sample.serum(Analyte.NEUROFILAMENT_LIGHT);
      Optional<String> simoa = Optional.of("Simoa");
      Built first = built("a", 0).with(light, Interval.of(8), simoa);

      assertThat(light(first, built("b", 9).with(light, Interval.of(30), simoa)).verdict())
          .isEqualTo(Change.Verdict.SIGNIFICANT);
      for (Optional<String> other : List.of(Optional.<String>empty(), Optional.of("Ella"))) {
        assertThat(light(first, built("b", 9).with(light, Interval.of(30), other)).verdict())
            .isEqualTo(Change.Verdict.NOT_COMPARABLE);
      }
    }

    private Change light(Built earlier, Built later) {
      return change(compare(earlier, later), "neurofilament-light");
    }

    @Test
    void compare_otherSite_doesNotCompareCsf() {
      Built later = built("b", 9);
      later.site = Optional.of("cisternal");
      Comparison both = compare(built("a", 0), later);

      assertThat(change(both, "albumin-quotient").note()).contains("different sites");
      assertThat(change(both, "albumin.serum").verdict())
          .isEqualTo(Change.Verdict.WITHIN_VARIATION);
    }

    @Test
    void compare_drawsFarApart_doNotCompareQuotients() {
      Built later = built("b", 20);
      later.serumHours = 200;

      assertThat(change(compare(built("a", 0), later), "igg-quotient").note())
          .contains("too far apart");
    }

    @Test
    void compare_doubtedValue_doesNotCompare() {
      assertThat(
              change(compare(built("a", 0), new Built("b", 9).panel(0.22, 62)), "albumin-quotient")
                  .note())
          .contains("doubted");
    }

    @Test
    void compare_treatmentBetween_isKeptInMind() {
      Built later = built("b", 9);
      later.circumstances =
          Map.of(
              Circumstance.IMMUNOGLOBULIN_INFUSION, Answer.YES,
              Circumstance.PLASMA_EXCHANGE, Answer.YES);
      Comparison both = compare(built("a", 0), later);

      assertThat(change(both, "igg-quotient").note())
          .contains("immunoglobulin infusion", "plasma exchange");
      assertThat(change(both, "albumin.csf").note()).doesNotContain("immunoglobulin");
      assertThat(remarks(both)).contains("code=comparability");
    }
  }
}
