package cistern.report.pdf;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.report.look.ReportFacts;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.paper.LabelStock;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Seal;
import cistern.report.paper.PaperPage;
import cistern.report.patient.PatientWords;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Writes pages as PDF. */
public final class PdfDocument {

  private static final String PAPER = "page.paper";
  private static final String LETTER = "letter";

  private final Page page;
  private final String sheet;
  private final Optional<Instant> time;

  private PdfDocument(Page page, String sheet, Optional<Instant> time) {
    this.page = page;
    this.sheet = sheet;
    this.time = time;
  }

  /**
   * A writer of PDFs.
   *
   * @param software the name and version of the program
   * @param facts in force; the size of the sheet is one of them
   */
  public static PdfDocument of(String software, Facts facts) {
    String size = ReportFacts.of(facts).word(PAPER).equals(LETTER) ? LETTER : "a4";
    return new PdfDocument(Page.of(software, facts), "@page{size:" + size + "}", Optional.empty());
  }

  /**
   * The same writer, with the time that a document says it was made at; then it is reproducible.
   */
  public PdfDocument withTime(Instant time) {
    return new PdfDocument(page, sheet, Optional.of(time));
  }

  /** The same writer, with papers for the person in another language. */
  public PdfDocument withWords(PatientWords words) {
    return new PdfDocument(page.withWords(words), sheet, time);
  }

  /**
   * The PDF of one interpretation with some files attached; the person's page carries none, because
   * they hold what that page must not say.
   */
  public byte[] write(
      Interpretation interpretation, Audience audience, List<Attachment> attachments) {
    return write(
        page.toPaper(interpretation, audience),
        audience == Audience.PATIENT ? List.of() : attachments);
  }

  /** The PDF of a paper with some files attached; an unsigned one says so across every sheet. */
  public byte[] write(Paper paper, List<Attachment> attachments) {
    Optional<String> watermark =
        paper.front().seal() instanceof Seal.Unsigned unsigned
            ? Optional.of(Watermark.words(unsigned.words()))
            : Optional.empty();
    return write(PaperPage.toPrint(paper, sheet(paper)), watermark, attachments);
  }

  private String sheet(Paper paper) {
    return switch (paper.front().kind()) {
      case CARD -> "@page{size:105mm 148mm;margin:7mm 7mm 10mm 7mm}";
      case LABELS -> sheet + LabelStock.of(page.facts()).toStyle();
      case CLINICIAN, LETTER, PATIENT, LEAF -> sheet;
    };
  }

  private byte[] write(String markup, Optional<String> watermark, List<Attachment> attachments) {
    // The renderer's own messages would stand among ours on standard error.
    XRLog.setLoggingEnabled(false);
    try (PDDocument document = new PDDocument();
        BatikSVGDrawer figures = new BatikSVGDrawer()) {
      PdfRendererBuilder builder = builder(document);
      builder.useSVGDrawer(figures);
      builder.withHtmlContent(markup, null);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      builder.toStream(out);
      try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
        renderer.createPDFWithoutClosing();
        if (watermark.isPresent()) {
          Watermark.on(document, watermark.get());
        }
        if (time.isPresent()) {
          MadeAt.in(document, time.get());
        }
        Attachments.with(document, attachments);
        document.save(out);
      }
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static PdfRendererBuilder builder(PDDocument document) {
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.usePDDocument(document);
    builder.usePdfUaAccessibility(true);
    builder.usePdfAConformance(PdfAConformance.PDFA_3_U);
    builder.useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
    for (Face face : Face.values()) {
      face.toBuilder(builder, document);
    }
    return builder;
  }
}
