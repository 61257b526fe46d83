package cistern.report.pdf;

import java.time.Instant;
import java.util.Optional;

/**
 * The time that a PDF says it was made at, where SOURCE_DATE_EPOCH names it in seconds since 1970:
 * then the same input gives the same bytes.
 */
public final class SourceDate {

  private static final String VARIABLE = "SOURCE_DATE_EPOCH";

  private SourceDate() {}

  /** The writer with that time, or as it is. */
  public static PdfDocument of(PdfDocument document) {
    return Optional.ofNullable(System.getenv(VARIABLE))
        .filter(seconds -> seconds.matches("[0-9]{1,11}"))
        .map(seconds -> document.withTime(Instant.ofEpochSecond(Long.parseLong(seconds))))
        .orElse(document);
  }
}
