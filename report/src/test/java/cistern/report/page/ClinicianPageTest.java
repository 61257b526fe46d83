package cistern.report.page;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.analysis.Puncture;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Problem;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Person;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class ClinicianPageTest {

  private static final Facts FACTS = Facts.standard();
  private static final Page PAGE = Page.of("Cistern 7.8.9", FACTS);
  private static final InventedPuncture PANEL_2 =
      InventedPuncture.withLocalSynthesis()
          .with(Sample.csf(Analyte.LEUKOCYTES), Interval.of(9))
          .withBands(6, 0);

  private static Parsed paper(Interpretation interpretation) {
    return Parsed.of(PAGE.toPaper(interpretation, Audience.CLINICIAN, ""));
  }

  private static String screen(InventedPuncture puncture) {
    return PAGE.toHtml(puncture.interpretation(), Audience.CLINICIAN);
  }

  private static Parsed screenParsed(InventedPuncture puncture) {
    return Parsed.of(screen(puncture).replace("<!DOCTYPE html>", ""));
  }

  @Nested
  class Screen {

    @Test
    void page_always_needsNothingButItself() {
      assertThat(screen(PANEL_2))
          .startsWith("<!DOCTYPE html>")
          .doesNotContain("<script", "src=", "@import", "url(http", "<link", "<img")
          .doesNotContainPattern("\\son[a-z]+=\"")
          .doesNotContainPattern("href=\"(?!#|https?://[^\"]+\" rel=\"noreferrer\")");
    }

    @Test
    void page_usualCase_isSmall() {
      assertThat(screen(PANEL_2).length()).isLessThan(200_000);
    }

    @Test
    void ids_always_areUnique() {
      List<String> ids =
          screenParsed(PANEL_2).all("//*[@id]").stream().map(e -> e.getAttribute("id")).toList();
      assertThat(ids).doesNotHaveDuplicates();
    }

    @Test
    void references_always_leadSomewhere() {
      Parsed page = screenParsed(PANEL_2);
      List<String> ids = page.all("//*[@id]").stream().map(e -> e.getAttribute("id")).toList();
      List<String> wanted = new ArrayList<>();
      page.all("//*[local-name()='a'][starts-with(@href, '#')]")
          .forEach(a -> wanted.add(a.getAttribute("href").substring(1)));
      page.all("//*[@aria-labelledby]")
          .forEach(e -> wanted.addAll(List.of(e.getAttribute("aria-labelledby").split(" ", -1))));
      page.all("//*[@clip-path]")
          .forEach(e -> wanted.add(e.getAttribute("clip-path").replaceAll("url\\(#(.*)\\)", "$1")));
      assertThat(wanted).isNotEmpty();
      assertThat(ids).containsAll(wanted);
    }

    @Test
    void figure_always_hasItsTableOneClickAway() {
      Parsed page = screenParsed(PANEL_2);
      int figures = page.all("//*[local-name()='figure']").size();
      assertThat(figures).isGreaterThanOrEqualTo(2);
      assertThat(page.all("//*[local-name()='figure']/figcaption/details//table")).hasSize(figures);
    }
  }

  @Nested
  class Order {

    @Test
    void top_always_isAnswerWithItsDoubtAndNextBeforeAnyNumber() {
      Parsed page = paper(PANEL_2.with(Analyte.ALBUMIN, 42_000, 220).interpretation());
      List<String> order = page.all("//main/*").stream().map(e -> e.getAttribute("class")).toList();

      assertThat(order.get(0)).isEqualTo("banner");
      assertThat(order).containsSubsequence("taken", "draft", "answer", "statement");
      assertThat(page.texts("//main/p[@class='answer']").getFirst())
          .startsWith("IgG is made inside");
      assertThat(page.texts("//h2")).containsSubsequence("Next", "Results", "Cautions", "Sources");
    }

    @Test
    void values_always_standInTheOrderInWhichASpecialistReads() {
      assertThat(
              paper(PANEL_2.interpretation())
                  .texts("//table[starts-with(@class,'strip')]/tbody/tr/th"))
          .startsWith("albumin quotient", "IgG quotient", "intrathecal IgG fraction", "local IgG")
          .endsWith("leukocytes");
    }
  }

  @Nested
  class Content {

    @Test
    void row_always_holdsValueLimitVerdictAndSource() {
      Parsed page = paper(PANEL_2.interpretation());
      Element row = page.all("//tr[th='IgG index']").getFirst();
      assertThat(row.getTextContent()).contains("1.08", "above", "≤ 0.70");
      assertThat(page.texts("//tr[th='IgG index']//span[@class='cite']").getFirst())
          .matches("\\[\\d+(,\\u00A0\\d+)*\\]");
    }

    @Test
    void row_withAnInterval_showsIt() {
      Interpretation plain = PANEL_2.interpretation();
      Interpretation sure =
          new Interpretation(
              plain.workup(),
              plain.factsVersion(),
              plain.policy(),
              new Puncture("wide", plain.panel(), PANEL_2.findings(1.2), plain.bands()),
              plain.repeat(),
              plain.alerts(),
              plain.weighed(),
              plain.conflicts(),
              plain.statements(),
              plain.problems(),
              plain.cautions());
      assertThat(
              Parsed.of(PAGE.toHtml(sure, Audience.CLINICIAN).replace("<!DOCTYPE html>", ""))
                  .texts("//tr[th='IgG index']/td[@class='interval']"))
          .containsExactly("0.90 to 1.29");
    }

    @Test
    void row_nearItsLimit_saysSoInWords() {
      // 0.69 against 0.70: about 4 in 10, the example of the project's brief
      Interpretation near = PANEL_2.with(Analyte.IGG, 39.757, 11_000).interpretation();
      Parsed page = paper(near);
      assertThat(page.texts("//p[@class='remarks']").getFirst())
          .contains("seen from this measurement, 4 chances in 10 to lie above");
      assertThat(page.texts("//tr[th='IgG index']//span[@class='remark']")).isNotEmpty();
    }

    @Test
    void everyFinding_withAValueOrAMeasuredSubject_isOnThePage() {
      Interpretation interpretation =
          PANEL_2.with(Sample.csf(Analyte.IGM), Interval.of(1)).interpretation();
      String text = paper(interpretation).text();
      for (Finding finding : interpretation.findings().all()) {
        if (finding.isAsked()) {
          assertThat(text).contains(finding.code().term());
        }
      }
      assertThat(text).contains("Undetermined: ", "not measured: serum IgM");
    }

    @Test
    void sources_weakerThanRead_areMarkedOnceInTheirNote() {
      Parsed page = paper(PANEL_2.interpretation());
      assertThat(page.texts("//ol[@class='sources']/li"))
          .anyMatch(l -> l.contains("(unconfirmed: recalled, not checked against the source)"))
          .anyMatch(l -> !l.contains("("));
    }

    @Test
    void conflictsAndProblems_whenThere_areTold() {
      Interpretation conflicted =
          PANEL_2.with(Analyte.ALBUMIN, 42_000, 220).withBands(0, 0).interpretation();
      Parsed page = paper(conflicted);
      assertThat(page.texts("//section[h2='What is wrong with the input']//li")).isNotEmpty();
      assertThat(page.texts("//section[starts-with(h2,'What is wrong with the input, each')]//li"))
          .hasSameSizeAs(conflicted.problems());
      Interpretation rules = PANEL_2.with(Analyte.ALBUMIN, 300, 42_000).interpretation();
      assertThat(paper(rules).texts("//section[h2='What disagrees']//li"))
          .hasSameSizeAs(rules.conflicts())
          .isNotEmpty();
    }

    @Test
    void bands_notReported_isSaid() {
      assertThat(paper(InventedPuncture.empty().interpretation()).text())
          .contains("No bands were reported.");
    }

    @Test
    void bands_counted_areTold() {
      assertThat(paper(PANEL_2.interpretation()).text())
          .contains("6 CSF-only, 0 shared, 0 serum-only: pattern 2");
    }

    @Test
    void foot_always_namesSoftwareFactsPolicyAndWorkup() {
      assertThat(paper(PANEL_2.interpretation()).texts("//p[@class='versions']").getFirst())
          .contains("Cistern 7.8.9", FACTS.version(), "no local policy", "invented-1");
    }

    @Test
    void banner_always_saysResearchEducationAndLocalPractice() {
      assertThat(paper(PANEL_2.interpretation()).texts("//p[@class='banner']").getFirst())
          .contains("For research and education", "not a medical device", "Local practice decides")
          .doesNotContain("invented");
    }

    @Test
    void banner_inventedData_saysSo() {
      Interpretation plain = PANEL_2.interpretation();
      List<Caution> cautions = new ArrayList<>(plain.cautions());
      cautions.add(Caution.INVENTED);
      Interpretation invented =
          new Interpretation(
              plain.workup(),
              plain.factsVersion(),
              Optional.of("house rules"),
              plain.puncture(),
              plain.repeat(),
              plain.alerts(),
              plain.weighed(),
              plain.conflicts(),
              plain.statements(),
              plain.problems(),
              cautions);
      for (Audience audience : Audience.values()) {
        Parsed page = Parsed.of(PAGE.toPaper(invented, audience, ""));
        assertThat(page.texts("//p[@class='banner']").getFirst()).contains("invented");
        if (audience != Audience.PATIENT) {
          assertThat(page.texts("//p[@class='versions']").getFirst())
              .contains("local policy house rules");
        }
      }
    }

    @Test
    void figures_onPaper_haveAlternativesAndTablesAtTheEnd() {
      Parsed page = paper(PANEL_2.interpretation());
      assertThat(page.all("//*[local-name()='svg'][not(@alt)]")).isEmpty();
      assertThat(page.texts("//div[@class='annex']//table/caption"))
          .anyMatch(caption -> caption.contains("IgG quotient above its limit"))
          .anyMatch(caption -> caption.contains("κ quotient above its limit"));
    }
  }

  @Nested
  class Hostile {

    @Test
    void page_hostileSexAndProblem_staysText() {
      String hostile = "<script>alert(1)</script>\u0000";
      Person person =
          new Person(Optional.of(hostile), OptionalDouble.of(0.04), Optional.of(hostile));
      InventedPuncture puncture = PANEL_2.with(person).with(List.<Problem>of(new Odd(hostile)));
      for (Audience audience : Audience.values()) {
        String html = PAGE.toHtml(puncture.interpretation(), audience);
        assertThat(html).doesNotContain("<script");
        Parsed.of(html.replace("<!DOCTYPE html>", ""));
      }
    }

    @Test
    void page_hundredsOfProblems_areAllThere() {
      List<Problem> many =
          IntStream.range(0, 400).<Problem>mapToObj(i -> new Odd("problem " + i)).toList();
      assertThat(
              paper(PANEL_2.with(many).interpretation())
                  .texts("//section[starts-with(h2,'What is wrong with the input, each')]//li"))
          .hasSize(400);
    }

    /** A problem with any text. */
    record Odd(String text) implements Problem {
      @Override
      public String code() {
        return "odd";
      }

      @Override
      public String place() {
        return String.join("", Collections.nCopies(40, "somewhere."));
      }
    }
  }
}
