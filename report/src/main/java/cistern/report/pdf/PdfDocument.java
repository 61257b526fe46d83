package cistern.report.pdf;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.report.look.ReportFacts;
import cistern.report.page.Audience;
import cistern.report.page.Page;
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
import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Writes pages as PDF. */
public final class PdfDocument {

  private static final String PAPER = "page.paper";
  private static final String LETTER = "letter";

  private final Page page;
  private final String sheet;

  private PdfDocument(Page page, String sheet) {
    this.page = page;
    this.sheet = sheet;
  }

  /**
   * A writer of PDFs.
   *
   * @param software the name and version of the program
   * @param facts in force; the size of the sheet is one of them
   */
  public static PdfDocument of(String software, Facts facts) {
    String size = ReportFacts.of(facts).word(PAPER).equals(LETTER) ? LETTER : "a4";
    return new PdfDocument(Page.of(software, facts), "@page{size:" + size + "}");
  }

  /**
   * The PDF of one interpretation with some files attached; the person's page carries none, because
   * they hold what that page must not say.
   */
  public byte[] write(
      Interpretation interpretation, Audience audience, List<Attachment> attachments) {
    return write(
        style -> page.toPaper(interpretation, audience, style),
        audience == Audience.PATIENT ? List.of() : attachments);
  }

  /**
   * The PDF of a page with some files attached.
   *
   * @param markup the page as well-formed markup, given the style of the sheet
   */
  public byte[] write(UnaryOperator<String> markup, List<Attachment> attachments) {
    // The renderer's own messages would stand among ours on standard error.
    XRLog.setLoggingEnabled(false);
    try (PDDocument document = new PDDocument();
        BatikSVGDrawer figures = new BatikSVGDrawer()) {
      PdfRendererBuilder builder = builder(document);
      builder.useSVGDrawer(figures);
      builder.withHtmlContent(markup.apply(sheet), null);
      return write(builder, document, attachments);
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

  private static byte[] write(
      PdfRendererBuilder builder, PDDocument document, List<Attachment> attachments)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    builder.toStream(out);
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
      renderer.createPDFWithoutClosing();
      Attachments.with(document, attachments);
      document.save(out);
    }
    return out.toByteArray();
  }
}
