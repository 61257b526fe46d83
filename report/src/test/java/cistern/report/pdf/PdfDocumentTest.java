package cistern.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Person;
import cistern.report.InventedPuncture;
import cistern.report.WeighedCase;
import cistern.report.look.ReportFacts;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.pdf.Attachment.Relation;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.verapdf.core.EncryptedPdfException;
import org.verapdf.core.ModelParsingException;
import org.verapdf.core.ValidationException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

class PdfDocumentTest {

  private static final Facts FACTS = Facts.standard();
  private static final PdfDocument PDF = PdfDocument.of("Cistern 7.8.9", FACTS);
  private static final InventedPuncture PANEL_2 =
      InventedPuncture.withLocalSynthesis().withBands(6, 0);

  /** What a work-up of suspected multiple sclerosis usually holds. */
  private static final InventedPuncture USUAL =
      PANEL_2
          .with(Sample.csf(Analyte.LEUKOCYTES), Interval.of(9))
          .with(Sample.csf(Analyte.ERYTHROCYTES), Interval.of(3))
          .with(Sample.csf(Analyte.TOTAL_PROTEIN), Interval.of(410))
          .with(Sample.csf(Analyte.LACTATE), Interval.of(1.6))
          .with(Analyte.GLUCOSE, 3.4, 5.2);

  private static final Attachment WORKUP =
      new Attachment(
          "invented-1.json",
          "application/json",
          "the work-up",
          Relation.SOURCE,
          "{\"workup\":1,\"κ\":true}");

  @BeforeAll
  static void loadValidator() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  private static byte[] written(Interpretation interpretation, Audience audience) {
    return PDF.write(interpretation, audience, List.of(WORKUP));
  }

  private static List<String> violations(byte[] pdf, PDFAFlavour flavour)
      throws ModelParsingException, EncryptedPdfException, ValidationException, IOException {
    try (PDFAParser parser =
        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour)) {
      ValidationResult result =
          Foundries.defaultInstance().createValidator(flavour, false).validate(parser);
      List<String> violations =
          new ArrayList<>(
              result.getTestAssertions().stream()
                  .filter(a -> a.getStatus() == TestAssertion.Status.FAILED)
                  .map(a -> a.getRuleId().getClause() + " " + a.getMessage())
                  .distinct()
                  .toList());
      if (!result.isCompliant() && violations.isEmpty()) {
        violations.add("not compliant");
      }
      return violations;
    }
  }

  private static List<InventedPuncture> punctures() {
    Person odd =
        new Person(Optional.empty(), OptionalDouble.of(0.5), Optional.of("fi ffl Ж 中 🧪 \u0007"));
    return List.of(
        PANEL_2,
        InventedPuncture.empty(),
        PANEL_2.with(odd).with(Analyte.ALBUMIN, 42_000, 220).with(Analyte.IGM, 1, 900));
  }

  @Test
  void write_everyPage_passesTheValidatorOfPdfA3uAndPdfUa1() throws Exception {
    int files = 0;
    for (InventedPuncture puncture : punctures()) {
      for (Audience audience : Audience.values()) {
        byte[] pdf = written(puncture.interpretation(), audience);
        assertThat(violations(pdf, PDFAFlavour.PDFA_3_U)).as("PDF/A, %s", audience).isEmpty();
        assertThat(violations(pdf, PDFAFlavour.PDFUA_1)).as("PDF/UA, %s", audience).isEmpty();
        files++;
      }
    }
    OutsideCheck.of(
            "Pages as PDF/A-3u and PDF/UA-1: full, empty and odd panels, three audiences",
            "veraPDF 1.30.2 (ISO 19005-3, ISO 14289-1)",
            "no violation")
        .toTable(files + " of " + files + " files valid in both profiles");
  }

  @Test
  void write_attachment_comesBackByteForByte() throws Exception {
    try (PDDocument pdf = Loader.loadPDF(written(PANEL_2.interpretation(), Audience.CLINICIAN))) {
      Map<String, PDComplexFileSpecification> files =
          pdf.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
      assertThat(files).containsOnlyKeys("invented-1.json");
      byte[] content =
          Objects.requireNonNull(files.get("invented-1.json")).getEmbeddedFile().toByteArray();
      assertThat(new String(content, StandardCharsets.UTF_8)).isEqualTo(WORKUP.content());
    }
  }

  @Test
  void write_patientPage_carriesNoFiles() throws Exception {
    try (PDDocument pdf = Loader.loadPDF(written(PANEL_2.interpretation(), Audience.PATIENT))) {
      assertThat(pdf.getDocumentCatalog().getNames()).isNull();
    }
  }

  @Test
  void write_twoAttachments_areBothAssociated() throws Exception {
    Attachment second =
        new Attachment("a.json", "application/json", "result", Relation.ALTERNATIVE, "{}");
    byte[] pdf = PDF.write(PANEL_2.interpretation(), Audience.CLINICIAN, List.of(WORKUP, second));
    assertThat(violations(pdf, PDFAFlavour.PDFA_3_U)).isEmpty();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames()).hasSize(2);
    }
  }

  @Test
  void write_usualCase_saysEverythingOnOnePage() throws Exception {
    assertThat(firstPage(USUAL.interpretation()))
        .contains("IgG is made inside the CNS", "Weakest link", "6 CSF-only")
        .contains("κ index", "Cautions", "Cistern 7.8.9", "no local policy", "Local practice")
        .contains("IgG quotient above its limit", "On the pages that follow", "CSF work-up");
  }

  /** Every conclusion stands on the first side; what it rests on is in the annex. */
  @Test
  void write_usualCaseWeighed_everyConclusionOnOnePage() throws Exception {
    assertThat(firstPage(WeighedCase.usual(USUAL)))
        .contains("IgG is made inside the CNS", "6 CSF-only", "κ index", "2017: met", "2024: met")
        .contains("Cautions", "no local policy")
        .doesNotContain("17-5", "McDonald2024draft");
  }

  private static String firstPage(Interpretation interpretation) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(written(interpretation, Audience.CLINICIAN))) {
      PDFTextStripper first = new PDFTextStripper();
      first.setEndPage(1);
      return first.getText(pdf);
    }
  }

  @Test
  void write_letter_isOnePage() throws Exception {
    try (PDDocument pdf = Loader.loadPDF(written(USUAL.interpretation(), Audience.REFERRER))) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1);
    }
  }

  @Test
  void write_unsignedPaper_saysSoAcrossEverySheetAndASignedOneDoesNot() throws Exception {
    Page page = Page.of("Cistern 7.8.9", FACTS);
    byte[] signed =
        PDF.write(
            page.withSignature("Signed by A. Doctor on 9 May 2034.")
                .toPaper(PANEL_2.interpretation(), Audience.REFERRER),
            List.of());
    try (PDDocument one = Loader.loadPDF(written(PANEL_2.interpretation(), Audience.REFERRER));
        PDDocument other = Loader.loadPDF(signed)) {
      assertThat(new PDFTextStripper().getText(one)).contains("Not signed");
      assertThat(new PDFTextStripper().getText(other))
          .contains("Signed by A. Doctor on 9 May 2034.")
          .doesNotContain("Not signed");
    }
  }

  @Test
  void write_withTheTimeGiven_isTheSameByteForByte() {
    PdfDocument timed = PDF.withTime(Instant.parse("2034-05-09T10:00:00Z"));
    for (Audience audience : Audience.values()) {
      byte[] one = timed.write(PANEL_2.interpretation(), audience, List.of(WORKUP));
      byte[] other = timed.write(PANEL_2.interpretation(), audience, List.of(WORKUP));
      assertThat(one).as(audience.word()).isEqualTo(other);
    }
  }

  @Test
  void write_paper_isA4UnlessPolicyWantsLetter() throws Exception {
    Policy letter =
        new Policy(
            "house",
            Map.of("page.paper", new Policy.Change(new FactValue.Word("letter"), "house")));
    PdfDocument american = PdfDocument.of("Cistern", FACTS.with(ReportFacts.table()).with(letter));
    assertSize(written(PANEL_2.interpretation(), Audience.PATIENT), PDRectangle.A4);
    assertSize(
        american.write(PANEL_2.interpretation(), Audience.PATIENT, List.of()), PDRectangle.LETTER);
  }

  private static void assertSize(byte[] pdf, PDRectangle size) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getPage(0).getMediaBox().getWidth())
          .isCloseTo(size.getWidth(), org.assertj.core.api.Assertions.within(1f));
    }
  }
}
