package cistern.exchange.json;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Optional;

/** Times of ISO 8601 with an offset, in the extended and in the basic form. */
public final class IsoTime {

  private static final DateTimeFormatter EXTENDED = DateTimeFormatter.ISO_OFFSET_DATE_TIME;

  private static final DateTimeFormatter BASIC =
      new DateTimeFormatterBuilder()
          .appendPattern("uuuuMMdd'T'HHmm[ss]X")
          .toFormatter()
          .withResolverStyle(ResolverStyle.STRICT);

  private IsoTime() {}

  /** The time of a text, if it is one. */
  public static Optional<OffsetDateTime> parse(String text) {
    return parse(text, EXTENDED).or(() -> parse(text, BASIC));
  }

  private static Optional<OffsetDateTime> parse(String text, DateTimeFormatter form) {
    try {
      return Optional.of(OffsetDateTime.parse(text, form));
    } catch (DateTimeException notOfThisForm) {
      return Optional.empty();
    }
  }
}
