package cistern.report.pdf;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumSet;
import java.util.Objects;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The cuts of the one family, embedded in every PDF. */
enum Face {
  REGULAR("SourceSans3_400Regular.ttf", 400, FontStyle.NORMAL),
  ITALIC("SourceSans3_400Regular_Italic.ttf", 400, FontStyle.ITALIC),
  SEMIBOLD("SourceSans3_600SemiBold.ttf", 600, FontStyle.NORMAL);

  private static final String FAMILY = "Source Sans 3";
  private static final int BOLD = 700;

  private final String resource;
  private final int weight;
  private final FontStyle style;

  Face(String resource, int weight, FontStyle style) {
    this.resource = resource;
    this.weight = weight;
    this.style = style;
  }

  /** Makes the cut known for the text of a document and for its figures. */
  void toBuilder(PdfRendererBuilder builder, PDDocument document) {
    PDFontSupplier text = new PDFontSupplier(font(document));
    builder.useFont(text, FAMILY, weight, style, true);
    if (this != ITALIC) {
      FSSupplier<InputStream> figures = this::file;
      builder.useFont(
          figures, FAMILY, weightInFigures(), style, true, EnumSet.of(FSFontUseCase.SVG));
    }
  }

  /** Figures know only plain and bold letters. */
  private int weightInFigures() {
    return this == SEMIBOLD ? BOLD : weight;
  }

  private InputStream file() {
    return Objects.requireNonNull(Face.class.getResourceAsStream(resource), resource);
  }

  /** Without ligatures: their glyphs would have no text behind them, which PDF/A-3u forbids. */
  PDFont font(PDDocument document) {
    try (InputStream in = file()) {
      TrueTypeFont face = new TTFParser().parse(new RandomAccessReadBuffer(in));
      face.setEnableGsub(false);
      return PDType0Font.load(document, face, true);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
