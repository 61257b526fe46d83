package cistern.report.pdf;

import java.awt.Color;
import java.io.IOException;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;

/**
 * Words across every sheet under its text, so pale that the text stays readable; an artifact to who
 * listens.
 */
final class Watermark {

  private static final COSName ARTIFACT = COSName.getPDFName("Artifact");
  private static final Color PALE = new Color(0xF1, 0xEF, 0xEB);
  private static final double ANGLE = Math.toRadians(52);

  /** How much of the sheet's width the words take. */
  private static final float SHARE = 0.75f;

  private static final float PER_UNIT = 1000;

  private Watermark() {}

  /** The first sentence of some words, without its full stop. */
  static String words(String sentences) {
    int end = sentences.indexOf('.');
    return end < 0 ? sentences : sentences.substring(0, end);
  }

  static void on(PDDocument document, String words) throws IOException {
    PDFont font = Face.SEMIBOLD.font(document);
    for (PDPage page : document.getPages()) {
      try (PDPageContentStream content =
          new PDPageContentStream(document, page, AppendMode.PREPEND, true, true)) {
        across(content, font, words, page.getMediaBox());
      }
    }
  }

  private static void across(
      PDPageContentStream content, PDFont font, String words, PDRectangle sheet)
      throws IOException {
    float perPoint = font.getStringWidth(words) / PER_UNIT;
    float size = sheet.getWidth() * SHARE / perPoint;
    float half = perPoint * size / 2;
    float x = sheet.getWidth() / 2 - half * (float) Math.cos(ANGLE);
    float y = sheet.getHeight() / 2 - half * (float) Math.sin(ANGLE);
    content.beginMarkedContent(ARTIFACT);
    content.beginText();
    content.setNonStrokingColor(PALE);
    content.setFont(font, size);
    content.setTextMatrix(Matrix.getRotateInstance(ANGLE, x, y));
    content.showText(words);
    content.endText();
    content.endMarkedContent();
  }
}
