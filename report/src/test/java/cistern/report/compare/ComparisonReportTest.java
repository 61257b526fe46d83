package cistern.report.compare;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.finding.UnitProfile;
import cistern.followup.Comparison;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.RepeatPunctures;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import cistern.report.Generated;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import cistern.report.figure.Figure;
import cistern.report.paper.Paper;
import cistern.report.paper.PaperPage;
import cistern.report.paper.PaperText;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ComparisonReportTest {

  private static final Person PERSON =
      new Person(Optional.of("p-7"), OptionalDouble.of(34), Optional.empty());
  private static final InventedPuncture FIRST =
      InventedPuncture.withLocalSynthesis().with(PERSON).withBands(6, 0).withId("first");

  private static Interpretation drawn(InventedPuncture puncture, int days) {
    OffsetDateTime at = OffsetDateTime.parse("2031-03-02T10:00:00Z").plusDays(days);
    Panel panel =
        Panel.of(puncture.person(), puncture.results())
            .withDraws(Draw.at(at), Draw.at(at.plusMinutes(30)));
    return Interpreter.of(Facts.standard())
        .interpret(new Workup(puncture.id(), panel, puncture.bands(), List.of()));
  }

  private static Comparison comparison() {
    InventedPuncture second =
        FIRST
            .with(Analyte.ALBUMIN, 420, 42_000)
            .with(Sample.csf(Analyte.KAPPA), Interval.below(0.3))
            .withBands(1, 0)
            .withId("second");
    return RepeatPunctures.of(Facts.standard())
        .compare(List.of(drawn(FIRST, 0), drawn(second, 100)));
  }

  private static String json(Comparison comparison) {
    return Generated.of(
        json ->
            ComparisonJson.of("Cistern test", "facts 1", Optional.empty()).write(json, comparison));
  }

  @Test
  void write_comparison_holdsEveryPromisedField() {
    assertThat(json(comparison()))
        .startsWith("{\"comparison\":1")
        .contains("\"person\":\"p-7\",\"days\":100.0")
        .contains("\"code\":\"albumin-quotient\",\"fromWorkup\":\"first\",\"toWorkup\":\"second\"")
        .contains("\"changeLimits\":[-0.1", "\"verdict\":\"significant\"")
        .contains("\"changeLimits\":null,\"verdict\":\"not-comparable\"")
        .contains("\"toBounds\":[0.0,0.3]")
        .contains("\"bands\":{\"gained\":0,\"lost\":5,\"verdict\":\"lost\"")
        .contains("\"statements\":[{\"rank\":1,\"code\":");
  }

  @Test
  void of_comparison_saysFirstWhatItMeans() {
    String text =
        PaperText.of(
                ComparisonPaper.of(
                    comparison(), Facts.standard(), List.of("Invented."), "Cistern test"))
            .replaceAll("\\s+", " ");

    assertThat(text)
        .startsWith("Repeat punctures of person p-7")
        .contains("never a verdict", "−18 to +22 %", "albumin quotient", "not comparable")
        .contains("between 0 and 0.3", "2 punctures over 100 days", "5");
    assertThat(text.indexOf("never a verdict")).isLessThan(text.indexOf("Over 100 days"));
  }

  @Test
  void timeLine_ofTwoPunctures_drawsAndTellsTheNumbers() {
    Figure figure = TimeLine.of(comparison(), UnitProfile.STANDARD).orElseThrow();

    assertThat(figure.title()).isEqualTo("2 punctures over 100 days");
    assertThat(figure.description())
        .contains("albumin quotient ×10³: 5.24 on day 0, 10.00 on day 100");
    assertThat(figure.table().rows())
        .contains(List.of("albumin quotient ×10³", "100", "10.00", "above"));
    assertThat(Parsed.of(figure.toSvg()).all("//*[local-name()='polyline']")).isNotEmpty();
  }

  @Test
  void timeLine_withoutTimes_isLeftOut() {
    Comparison untimed =
        RepeatPunctures.of(Facts.standard())
            .compare(List.of(FIRST.interpretation(), FIRST.withId("b").interpretation()));

    assertThat(TimeLine.of(untimed, UnitProfile.STANDARD)).isEmpty();
  }

  @Test
  void toHtml_comparison_isWellFormed() {
    Paper paper =
        ComparisonPaper.of(comparison(), Facts.standard(), List.of("Invented."), "Cistern test");
    String html = PaperPage.toHtml(paper);
    Parsed page = Parsed.of(html.substring(html.indexOf("<html")));

    assertThat(page.texts("//h2")).contains("Punctures", "Bands, first to second");
    assertThat(page.all("//*[local-name()='svg']")).hasSize(1);
    assertThat(page.all("//details")).hasSize(1);
    assertThat(Parsed.of(PaperPage.toPrint(paper, "")).all("//*[local-name()='svg']")).hasSize(1);
  }
}
