package cistern.report.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.GregorianCalendar;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * The time at which a document says that it was made, in its information, its metadata and its
 * identifier: with it the same input gives the same bytes.
 */
final class MadeAt {

  private static final Pattern TIMES =
      Pattern.compile(
          "\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(?:\\.\\d+)?(?:Z|[+-]\\d{2}:?\\d{2})");

  private MadeAt() {}

  static void in(PDDocument document, Instant time) throws IOException {
    Instant second = time.truncatedTo(ChronoUnit.SECONDS);
    document
        .getDocumentInformation()
        .setCreationDate(GregorianCalendar.from(second.atZone(ZoneOffset.UTC)));
    document
        .getDocumentInformation()
        .setModificationDate(GregorianCalendar.from(second.atZone(ZoneOffset.UTC)));
    document.setDocumentId(second.getEpochSecond());
    Optional<PDMetadata> metadata =
        Optional.ofNullable(document.getDocumentCatalog().getMetadata());
    if (metadata.isPresent()) {
      String said = new String(metadata.get().toByteArray(), StandardCharsets.UTF_8);
      String fixed = TIMES.matcher(said).replaceAll(second.toString());
      metadata.get().importXMPMetadata(fixed.getBytes(StandardCharsets.UTF_8));
    }
  }
}
