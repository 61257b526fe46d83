package cistern.report.plan;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.fact.Facts;
import cistern.puncture.PuncturePlan;
import cistern.report.Generated;
import cistern.report.Parsed;
import cistern.report.paper.Paper;
import cistern.report.paper.PaperPage;
import cistern.report.paper.PaperText;
import cistern.report.patient.PatientPuncture;
import cistern.report.patient.PatientWords;
import cistern.report.patient.ReadingGrade;
import cistern.report.pdf.PdfDocument;
import cistern.report.wording.PrintedTime;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;

class PlanTest {

  private static final String FOOT = "Cistern test; no local policy";
  private static final Facts FACTS = Facts.standard();

  private static Paper paper(PuncturePlan plan) {
    return PlanPaper.of(InventedPlan.WORKUP, plan, FOOT);
  }

  private static Paper patient(PuncturePlan plan) {
    return PatientPuncture.of(PatientWords.english(), InventedPlan.WORKUP, plan, FOOT);
  }

  private static String json(PuncturePlan plan) {
    return Generated.of(
        json ->
            PlanJson.of("Cistern test", "facts 1", Optional.of("ward"))
                .write(json, InventedPlan.WORKUP, plan));
  }

  /** Line breaks of a paper count as blanks. */
  private static String text(Paper paper) {
    return PaperText.of(paper).replaceAll("\\s+", " ");
  }

  @Nested
  class AsJson {

    @Test
    void write_fullPlan_holdsEveryPromisedField() {
      assertThat(json(InventedPlan.full()))
          .startsWith("{\"plan\":2,\"workup\":\"invented-1\"")
          .contains("\"puncture\":{\"2017\":\"no-effect\",\"2024\":\"no-effect\"}")
          .contains("\"cautions\":[{\"code\":\"", "\"checked\":[")
          .contains("\"drug\":\"apixaban\",\"doseClass\":\"high\",\"hoursSinceLastDose\":50.0")
          .contains("\"name\":\"ABN\",\"year\":2018", "\"year\":null", "\"holdHours\":null")
          .contains("\"holdHours\":[72.0,72.0]")
          .contains("\"answer\":\"ask\"", "\"answer\":\"not-passed\"")
          .contains("\"guidance\":{\"method\":\"ultrasound-or-fluoroscopy\"")
          .contains("\"headacheRisk\":{\"band\":[", "\"factors\":[", "\"validated\":false")
          .contains("\"tubes\":[{\"order\":1,\"ml\":", "\"container\":", "\"limit\":")
          .contains("\"openingPressure\":{\"cm[H2O]\":24.0")
          .contains("\"test\":\"culture\",\"state\":\"overdue\"")
          .contains("\"untold\":false", "within 30 min")
          .contains("\"field\":\"notEasingLying\"", "\"present\":true");
    }

    @Test
    void write_emptyPlan_hasNullsWhereNothingIsKnown() {
      assertThat(json(InventedPlan.empty()))
          .contains("\"puncture\":{}", "\"antithrombotics\":[]", "\"openingPressure\":null")
          .contains("\"outstanding\":[]", "\"asOf\":null", "\"state\":\"open\"")
          .doesNotContain("\"state\":\"checked\"");
    }
  }

  @Nested
  class AsText {

    @Test
    void of_urgentHeadache_putsItFirst() {
      String text = text(paper(InventedPlan.full()));

      assertThat(text.indexOf("Changed headache"))
          .isPositive()
          .isLessThan(text.indexOf("Blood patch"));
      assertThat(text).doesNotContain("Before Present");
    }

    @Test
    void of_fullPlan_showsWhatEachReaderNeeds() {
      assertThat(text(paper(InventedPlan.waiting())))
          .contains("ABN 2018", "ESAIC/ESRA 2022", "local policy", "ask the prescriber")
          .contains("never averaged", "lumbar fusion or hardware", "computed from the BMI")
          .contains("Unvalidated", "not counted", "made again in about");
      assertThat(text(paper(InventedPlan.full())))
          .contains("ABN 2018", "Blood patch")
          .contains("24.0 cmH₂O = 17.7 mmHg = 2.35 kPa", "root pain", "22G atraumatic")
          .contains("Day 1", "overdue")
          .contains("Told: Dr Invented", "Nothing is said of a blood patch")
          .contains(
              "For a day or more not easing on lying flat? – answer: yes", "Fever? – answer: no")
          .contains("Sources [1]");
    }

    @Test
    void labels_ofAPlan_holdIdentifiersAndTheSerumOfTheVisit() {
      String text = text(TubePaper.labels(InventedPlan.WORKUP, InventedPlan.full(), FACTS, FOOT));

      assertThat(text)
          .contains("CSF 1/", "SERUM of the same visit", "Work-up invented-1", "Name, born ____")
          .doesNotContain("Guidelines");
    }

    @Test
    void card_ofAPlan_saysVerdictDrugsAndTubes() {
      String text =
          text(CardPaper.of(InventedPlan.WORKUP, InventedPlan.empty(), PrintedTime.AS_GIVEN, FOOT));

      assertThat(text).contains("Ask first", "Tubes", "Serum of the same visit");
    }

    @Test
    void of_planBefore_leadsWithWhatIsOpenDrugsTubesAndWhoIsTold() {
      String text = text(paper(InventedPlan.waiting()));

      assertThat(text)
          .contains("What is “an <unknown> drug”?", "Earliest time by each guideline")
          .contains("who prescribed apixaban", "Serum: the same visit");
      assertThat(text.indexOf("Open: ask")).isLessThan(text.indexOf("Earliest time"));
      assertThat(text.indexOf("Who is told")).isLessThan(text.indexOf("Drugs as typed"));
    }

    @Test
    void of_emptyPlan_asksAndNeverCallsItSafe() {
      String text = text(paper(InventedPlan.empty()));

      assertThat(text)
          .contains("not known", "does not say that a puncture is without danger", "Open: ask")
          .contains("Landmarks: no difficulty is recorded", "Looked at: – Nothing.")
          .doesNotContain("Opening pressure", "Antithrombotic:");
    }

    @Test
    void of_anyPlan_neverTellsAnybodyToStopAMedicine() {
      for (PuncturePlan plan : List.of(InventedPlan.full(), InventedPlan.empty())) {
        for (Paper paper : List.of(paper(plan), patient(plan))) {
          assertThat(text(paper).toLowerCase(Locale.ROOT))
              .doesNotContain("stop taking", "withhold", "discontinue", "excludes ms", "absent");
        }
      }
    }
  }

  @Nested
  class ForThePerson {

    @Test
    void of_patientPage_saysWhatHelpsAndWhomToCall() {
      assertThat(text(patient(InventedPlan.empty())))
          .contains("Draft", "your own blood is put near the small hole", "day and night: ____")
          .contains("Do not change or leave out a medicine by yourself");
    }

    @Test
    void of_patientPageBesideARedFlag_onlySaysWhomToAskAndWhen() {
      assertThat(text(patient(InventedPlan.full())))
          .contains("speak to your doctor today")
          .doesNotContain("your own blood", "go away by themselves");
    }

    @Test
    void of_patientPage_namesNoChanceAndNoDose() {
      assertThat(text(patient(InventedPlan.full()))).doesNotContain("%", " mg", "odds", "risk");
    }

    /** About twelve years of age is grade 6 to 7 (Kincaid 1975). */
    @Test
    void of_patientPage_canBeReadAtTwelve() {
      List<String> said =
          patient(InventedPlan.full()).sections().stream()
              .flatMap(s -> s.blocks().stream())
              .filter(Paper.Items.class::isInstance)
              .flatMap(b -> ((Paper.Items) b).lines().stream())
              .map(Paper.Line::text)
              .toList();

      assertThat(ReadingGrade.of(said)).isLessThanOrEqualTo(7);
    }
  }

  @Nested
  class AsPage {

    @Test
    void toHtml_fullPlan_isWellFormedAndEscaped() {
      String html = PaperPage.toHtml(paper(InventedPlan.full()));
      Parsed page = Parsed.of(html.substring(html.indexOf("<html")));

      assertThat(page.texts("//h1"))
          .containsExactly("Plan for the lumbar puncture, work-up invented-1");
      assertThat(page.texts("//summary")).contains("Antithrombotic: apixaban");
      assertThat(page.texts("//h2")).contains("Blood patch", "Sources");
      assertThat(html).contains("an &lt;unknown&gt; drug", "not a known name");
      assertThat(page.all("//table")).hasSizeGreaterThan(6);
      assertThat(page.all("//script")).isEmpty();
      assertThat(html).contains("not a medical device");
    }

    @Test
    void toHtml_withoutSources_hasNoSuchSection() {
      String html = PaperPage.toHtml(patient(InventedPlan.empty()));

      assertThat(Parsed.of(html.substring(html.indexOf("<html"))).texts("//h2"))
          .doesNotContain("Sources");
    }

    /** A full plan: everything that can stand in the way, every chart, every tube. */
    @Test
    void toPrint_beforeAPuncture_hasOneSideAndAnAnnex() throws IOException {
      PdfDocument pdf = PdfDocument.of("Cistern test", FACTS);
      for (PuncturePlan plan : List.of(InventedPlan.waiting(), InventedPlan.empty())) {
        try (PDDocument read = Loader.loadPDF(pdf.write(paper(plan), List.of()))) {
          PDFTextStripper stripper = new PDFTextStripper();
          stripper.setEndPage(1);
          assertThat(stripper.getText(read)).contains("Who is told", "On the pages that follow");
        }
      }
    }

    @Test
    void toPrint_labels_fillTheStockFromItsCorner() throws IOException {
      PdfDocument pdf = PdfDocument.of("Cistern test", FACTS);
      Paper labels = TubePaper.labels(InventedPlan.WORKUP, InventedPlan.full(), FACTS, FOOT);
      try (PDDocument read = Loader.loadPDF(pdf.write(labels, List.of()))) {
        assertThat(read.getNumberOfPages()).isEqualTo(1);
        assertThat(new PDFTextStripper().getText(read)).startsWith("CSF 1/");
      }
    }

    @Test
    void toPrint_card_isOneLeafOfA6() throws IOException {
      PdfDocument pdf = PdfDocument.of("Cistern test", FACTS);
      Paper card =
          CardPaper.of(InventedPlan.WORKUP, InventedPlan.waiting(), PrintedTime.AS_GIVEN, FOOT);
      try (PDDocument read = Loader.loadPDF(pdf.write(card, List.of()))) {
        assertThat(read.getNumberOfPages()).isEqualTo(1);
        // 105 by 148 mm in points
        assertThat(read.getPage(0).getMediaBox().getWidth()).isBetween(297f, 298.5f);
        assertThat(read.getPage(0).getMediaBox().getHeight()).isBetween(419f, 420.5f);
      }
    }

    @Test
    void toPrint_everyPaper_isValidPdf() throws Exception {
      VeraGreenfieldFoundryProvider.initialise();
      List<Paper> papers =
          List.of(
              paper(InventedPlan.full()),
              TubePaper.labels(InventedPlan.WORKUP, InventedPlan.full(), FACTS, FOOT),
              CardPaper.of(InventedPlan.WORKUP, InventedPlan.full(), PrintedTime.AS_GIVEN, FOOT),
              patient(InventedPlan.full()));
      PdfDocument pdf = PdfDocument.of("Cistern test", Facts.standard());
      for (Paper paper : papers) {
        byte[] bytes = pdf.write(paper, List.of());
        for (PDFAFlavour flavour : List.of(PDFAFlavour.PDFA_3_U, PDFAFlavour.PDFUA_1)) {
          try (PDFAParser parser =
              Foundries.defaultInstance().createParser(new ByteArrayInputStream(bytes), flavour)) {
            assertThat(Foundries.defaultInstance().createValidator(flavour, false).validate(parser))
                .satisfies(result -> assertThat(result.getTestAssertions()).isEmpty())
                .satisfies(result -> assertThat(result.isCompliant()).isTrue());
          }
        }
      }
      OutsideCheck.of(
              "Plans as PDF/A-3u and PDF/UA-1: full, labels, card, and the page for the person",
              "veraPDF 1.30.2 (ISO 19005-3, ISO 14289-1)",
              "no violation")
          .toTable(papers.size() + " of " + papers.size() + " files valid in both profiles");
    }
  }
}
