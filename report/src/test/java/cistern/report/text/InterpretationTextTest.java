package cistern.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.bands.BandReport.Origin;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class InterpretationTextTest {

  private static final OffsetDateTime DRAWN = OffsetDateTime.parse("2034-05-09T10:00:00Z");

  private static final List<Measurement> PAIR =
      List.of(
          result(Sample.csf(Analyte.ALBUMIN), Interval.of(220)),
          result(Sample.serum(Analyte.ALBUMIN), Interval.of(42_000)),
          result(Sample.csf(Analyte.IGG), Interval.of(62)),
          result(Sample.serum(Analyte.IGG), Interval.of(11_000)));

  @Test
  void write_theUsualCase_opensWithTheAnswer() {
    String text = write(PAIR, counted(6));
    List<String> lines = text.lines().toList();

    assertThat(lines.get(1)).startsWith("35 years · CSF drawn 9 May 2034, 10:00 UTC");
    assertThat(lines.get(2)).startsWith("For research and education.");
    assertThat(lines.get(4)).startsWith("IgG is made inside the CNS: 6 CSF-only bands");
    assertThat(text)
        .containsPattern("○ albumin quotient +5.24 × 10⁻³ +≤ 6.33 +within")
        .containsPattern("● IgG index +1.08 +≤ 0.70 +above")
        .contains("−9.9 to 3.3")
        .contains("Sources\n  [1] ", "Tumani 2020")
        .contains("unconfirmed: recalled")
        .endsWith("Work-up w-1.\n");
    // the last sentence breaks where the list of tables ends
    assertThat(text.replaceAll("\\s+", " ")).contains("no local policy. Work-up w-1.");
  }

  @Test
  void write_anyCase_breaksLongLines() {
    assertThat(write(PAIR, counted(1)).lines().mapToInt(String::length).max().orElseThrow())
        .isLessThanOrEqualTo(110);
  }

  @Test
  void write_valuesWithoutInput_areLeftOut() {
    String text = write(PAIR, counted(6));

    assertThat(text).doesNotContain("rubella antibody index").doesNotContain("lactate");
    assertThat(write(List.of(), new BandReport.NotReported()))
        .contains("No results were given.")
        .contains("No bands were reported.");
  }

  @Test
  void write_censoredValues_showTheirBounds() {
    List<Measurement> censored =
        List.of(
            result(Sample.csf(Analyte.LACTATE), Interval.below(0.5)),
            result(Sample.csf(Analyte.LEUKOCYTES), Interval.above(4_000)),
            result(Sample.csf(Analyte.GLUCOSE), Interval.of(3)),
            result(Sample.serum(Analyte.GLUCOSE), Interval.of(5)));

    assertThat(write(censored, new BandReport.NotReported()))
        .contains("< 0.5 mmol/L", "> 4000 /µL", "< 5", "≥ 0.50");
  }

  @Test
  void write_doubtsAndProblems_areSaidWhereTheyBelong() {
    List<Measurement> slipped =
        List.of(
            result(Sample.csf(Analyte.ALBUMIN), Interval.of(220)),
            result(Sample.serum(Analyte.ALBUMIN), Interval.of(42)));

    assertThat(write(slipped, new BandReport.NotReported()))
        .containsPattern("◌ albumin quotient")
        .contains("is doubted")
        .contains("What is wrong with the input\n  – The albumin would be plausible")
        .contains("(results.albumin.serum)");
  }

  @Test
  void write_anUnconfirmedGel_saysSo() {
    BandReport gel =
        new BandReport.ReadFromGel(
            "gel.png",
            BandCounts.of(4, 0, 0),
            Optional.of(BandPattern.LOCAL),
            OptionalDouble.of(0.97),
            List.of(),
            Optional.empty());

    assertThat(write(PAIR, gel)).containsPattern("read\\s+automatically,\\s+to\\s+be\\s+confirmed");
  }

  @Test
  void write_factsUnderPolicy_showsWhatItChanged() {
    Facts facts =
        Facts.standard()
            .with(
                new Policy(
                    "ours",
                    Map.of(
                        "igg-index.upper", new Policy.Change(new FactValue.Figure(0.66), "memo"))));

    assertThat(FactsText.write(facts))
        .contains("policy ours")
        .contains("changed by local policy, standard 0.7 1")
        .contains("mean + 3 CV, 433 controls");
    assertThat(FactsText.write(Facts.standard())).contains("no local policy");
  }

  /** It stands with its group and its two tables; nothing of it is said to the person. */
  @Test
  void write_measuredInBloodAlone_standsBesideItsLimitAndNotOnThePersonsPage() {
    List<Measurement> results = new ArrayList<>(PAIR);
    results.add(
        new Measurement(
            Sample.serum(Analyte.NEUROFILAMENT_LIGHT),
            Interval.of(30),
            OptionalDouble.empty(),
            Optional.of("Simoa"),
            Optional.empty(),
            "results[4]"));
    Interpretation said = interpretation(results, counted(6));
    Page page = Page.of("Cistern test", Facts.standard());

    assertThat(page.toPlainText(said, Audience.CLINICIAN))
        .containsPattern("● neurofilament light +30.0 ng/L +≤ 11.4 +above")
        .containsPattern("not\\s+for\\s+diagnosis");
    assertThat(page.toPlainText(said, Audience.REFERRER)).contains("neurofilament light");
    assertThat(page.toHtml(said, Audience.CLINICIAN)).contains("Measured in blood alone");
    assertThat(page.toPlainText(said, Audience.PATIENT)).doesNotContainIgnoringCase("neurofil");
  }

  private static BandReport counted(int csfOnly) {
    return new BandReport.Counted(
        BandCounts.of(csfOnly, 0, 0), Optional.empty(), Origin.UNKNOWN, Optional.empty());
  }

  private static Measurement result(Sample sample, Interval value) {
    return Measurement.of(sample, value);
  }

  private static String write(List<Measurement> results, BandReport bands) {
    return Page.of("Cistern test", Facts.standard())
        .toPlainText(interpretation(results, bands), Audience.CLINICIAN);
  }

  private static Interpretation interpretation(List<Measurement> results, BandReport bands) {
    Panel panel =
        Panel.of(Person.aged(35), results)
            .withDraws(Draw.at(DRAWN), Draw.at(DRAWN.plusMinutes(45)));
    return Interpreter.of(Facts.standard()).interpret(new Workup("w-1", panel, bands, List.of()));
  }
}
