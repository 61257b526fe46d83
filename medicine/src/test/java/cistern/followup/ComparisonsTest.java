package cistern.followup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.finding.FindingCode;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Measurement;
import cistern.measurement.ReportedValue;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparisonsTest {

  private static final Facts FACTS = Facts.standard();
  private static final OffsetDateTime FIRST = OffsetDateTime.parse("2031-03-02T10:00:00Z");

  /** An invented puncture, built one field at a time. */
  private static final class Built {
    private final String id;
    private final List<Measurement> results = new ArrayList<>();
    private Optional<String> person = Optional.of("p-1");
    private Optional<OffsetDateTime> at;
    private Optional<String> site = Optional.of("lumbar");
    private double serumHours = 1;
    private Map<Circumstance, Answer> circumstances = Map.of();
    private BandReport bands = new BandReport.NotReported();

    private Built(String id, int days) {
      this.id = id;
      at = Optional.of(FIRST.plusDays(days));
    }

    private Built with(Sample sample, double value) {
      return with(sample, new ReportedValue.Exact(value), Optional.of("nephelometry"));
    }

    private Built with(Sample sample, ReportedValue value, Optional<String> assay) {
      results.removeIf(m -> m.sample().equals(sample));
      results.add(
          new Measurement(
              sample, value, OptionalDouble.empty(), assay, Optional.empty(), "results"));
      return this;
    }

    private Built panel(double csfAlbumin, double csfIgg) {
      return with(Sample.csf(Analyte.ALBUMIN), csfAlbumin)
          .with(Sample.serum(Analyte.ALBUMIN), 42_000)
          .with(Sample.csf(Analyte.IGG), csfIgg)
          .with(Sample.serum(Analyte.IGG), 11_000);
    }

    private Built bands(int csfOnly, String method) {
      bands =
          new BandReport.Counted(
              BandCounts.of(csfOnly, 0, 0),
              Optional.empty(),
              new BandReport.Origin(Optional.of(method), Optional.empty()),
              Optional.empty());
      return this;
    }

    private Episode episode() {
      Draw csf = new Draw(at, Optional.empty(), Optional.empty(), site, OptionalDouble.empty());
      Draw serum =
          at.map(t -> Draw.at(t.plusMinutes(Math.round(serumHours * 60)))).orElse(Draw.UNKNOWN);
      Panel panel =
          Panel.of(new Person(person, OptionalDouble.of(34), Optional.empty()), results)
              .withDraws(csf, serum)
              .withCircumstances(circumstances);
      Workup workup = new Workup(id, panel, bands, List.of());
      Interpretation read = Interpreter.of(FACTS).interpret(workup);
      return new Episode(id, read.panel(), read.findings(), read.bands());
    }
  }

  private static Built built(String id, int days) {
    return new Built(id, days).panel(220, 62);
  }

  private static Comparison compare(Built... built) {
    return Comparisons.of(FACTS).compare(List.of(built).stream().map(Built::episode).toList());
  }

  private static Change change(Comparison comparison, String code) {
    return comparison.steps().getFirst().changes().stream()
        .filter(c -> c.code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private static String remarks(Comparison comparison) {
    return comparison.remarks().toString();
  }

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
      List<Episode> both =
          List.of(built("a", 0).episode(), new Built("b", 9).panel(300, 62).episode());

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
      Built first =
          built("a", 0).with(kappa, new ReportedValue.Below(0.3), Optional.of("nephelometry"));

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
              .with(
                  Sample.csf(Analyte.ALBUMIN),
                  new ReportedValue.Exact(500),
                  Optional.of("turbidimetry"));

      Change change = change(compare(built("a", 0), later), "igg-index");

      assertThat(change.verdict()).isEqualTo(Change.Verdict.NOT_COMPARABLE);
      assertThat(change.note()).contains("nephelometry", "turbidimetry");
    }

    @Test
    void compare_unstatedAssay_isKeptInMind() {
      Built later =
          built("b", 9)
              .with(Sample.csf(Analyte.ALBUMIN), new ReportedValue.Exact(500), Optional.empty());

      assertThat(change(compare(built("a", 0), later), "albumin-quotient"))
          .satisfies(c -> assertThat(c.verdict()).isEqualTo(Change.Verdict.SIGNIFICANT))
          .satisfies(c -> assertThat(c.note()).contains("assay is not stated"));
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

  @Nested
  class Series {

    @Test
    void refusal_namesAMissingOrADifferentPerson() {
      Built nobody = built("b", 9);
      nobody.person = Optional.empty();
      Built other = built("c", 9);
      other.person = Optional.of("p-2");
      Episode first = built("a", 0).episode();

      assertThat(Comparisons.refusal(List.of(first, nobody.episode())).orElseThrow())
          .contains("missing");
      assertThat(Comparisons.refusal(List.of(first, other.episode())).orElseThrow())
          .contains("differs");
      assertThat(Comparisons.refusal(List.of(first, built("b", 9).episode()))).isEmpty();
      assertThat(remarks(compare(built("a", 0), other))).contains("person-declared");
    }

    @Test
    void compare_filesOutOfOrder_arePutInOrderOfTime() {
      Comparison three = compare(built("late", 200), built("early", 0), built("middle", 50));

      assertThat(three.episodes())
          .extracting(Episode::workup)
          .containsExactly("early", "middle", "late");
      assertThat(three.steps()).hasSize(2);
      assertThat(three.days()).hasValue(200);
      assertThat(remarks(three)).contains("code=order");
      assertThat(three.person()).contains("p-1");
    }

    @Test
    void compare_missingTime_keepsTheOrderAndHasNoDays() {
      Built later = built("b", 9);
      later.at = Optional.empty();
      Comparison both = compare(built("a", 30), later);

      assertThat(both.days()).isEmpty();
      assertThat(both.episodes()).extracting(Episode::workup).containsExactly("a", "b");
      assertThat(remarks(both)).contains("days between are not known");
    }

    @Test
    void compare_nothingMeasured_saysThatNothingCompares() {
      assertThat(remarks(compare(new Built("a", 0), new Built("b", 5))))
          .contains("code=nothing-compares", "code=bands-undetermined");
    }
  }

  @Nested
  class Bands {

    @ParameterizedTest
    @CsvSource({
      "6, 6, persistent, 0, 0",
      "6, 9, persistent, 3, 0",
      "6, 0, lost, 0, 6",
      "6, 1, lost, 0, 5",
      "0, 4, gained, 4, 0",
      "1, 4, gained, 3, 0",
      "0, 0, not-demonstrated, 0, 0",
      "0, 1, borderline, 1, 0"
    })
    void compare_counts_areGainedOrLost(int from, int to, String verdict, int gained, int lost) {
      BandChange bands =
          compare(built("a", 0).bands(from, "IEF"), built("b", 9).bands(to, "IEF"))
              .steps()
              .getFirst()
              .bands();

      assertThat(bands.verdict().word()).isEqualTo(verdict);
      assertThat(bands.gained()).hasValue(gained);
      assertThat(bands.lost()).hasValue(lost);
    }

    @Test
    void compare_bandsThatGo_areAPromptAndNeverAVerdict() {
      String said = remarks(compare(built("a", 0).bands(6, "IEF"), built("b", 9).bands(0, "IEF")));

      assertThat(said)
          .contains("acute disseminated encephalomyelitis", "neuromyelitis", "never a verdict")
          .contains("17 of 227", "4 of 48")
          .doesNotContain("absent", "excludes");
    }

    @Test
    void compare_methodAndResultChanged_namesTheMethodFirst() {
      Comparison both = compare(built("a", 0).bands(6, "agarose"), built("b", 9).bands(0, "IEF"));

      assertThat(both.steps().getFirst().bands().verdict())
          .isEqualTo(BandChange.Verdict.METHOD_CHANGED);
      assertThat(both.remarks().getFirst().code()).isEqualTo("band-method-changed");
      assertThat(both.remarks().getFirst().text()).contains("agarose", "IEF", "cut-off 2");
    }

    @Test
    void compare_singleBand_suggestsARepeat() {
      assertThat(remarks(compare(built("a", 0).bands(0, "IEF"), built("b", 9).bands(1, "IEF"))))
          .contains("code=bands-borderline", "A repeat is suggested");
    }

    @Test
    void of_gelReading_carriesItsUncertainty() {
      BandReport gel =
          new BandReport.ReadFromGel(
              "gel.png",
              BandCounts.of(2, 0, 0),
              Optional.of(BandPattern.LOCAL),
              0.8,
              List.of(0.1, 0.1, 0.6, 0.2),
              Optional.of("reader"));
      BandReport counted =
          new BandReport.Counted(
              BandCounts.of(1, 0, 0),
              Optional.empty(),
              BandReport.Origin.UNKNOWN,
              Optional.empty());

      BandChange change = BandChange.of(BandReading.of(counted, FACTS), BandReading.of(gel, FACTS));

      assertThat(change.chances().orElseThrow().more()).isEqualTo(0.8, within(1e-12));
      assertThat(change.chances().orElseThrow().fewer()).isEqualTo(0.1, within(1e-12));
    }

    @Test
    void of_patternsAlone_haveNoCounts() {
      BandReport positive = new BandReport.Patterned(BandPattern.LOCAL, BandReport.Origin.UNKNOWN);
      BandReport negative = new BandReport.Concluded(false, BandReport.Origin.UNKNOWN);

      BandChange change =
          BandChange.of(BandReading.of(positive, FACTS), BandReading.of(negative, FACTS));

      assertThat(change.verdict()).isEqualTo(BandChange.Verdict.LOST);
      assertThat(change.gained()).isEqualTo(OptionalInt.empty());
      assertThat(change.chances()).isEmpty();
    }
  }
}
