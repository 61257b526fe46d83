package cistern.exchange.fhir;

import cistern.exchange.lab.Moment;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/** Dates and times of FHIR: a day, or a time with its offset. */
final class FhirTime {

  private static final int DAY = 10;
  private static final int SECONDS = 60;

  private FhirTime() {}

  static Optional<Moment> parse(String text) {
    try {
      if (text.length() == DAY) {
        return Optional.of(Moment.of(LocalDate.parse(text)));
      }
      return text.isEmpty() ? Optional.empty() : Optional.of(Moment.of(OffsetDateTime.parse(text)));
    } catch (DateTimeException notATime) {
      return Optional.empty();
    }
  }

  /** The time of an element that may be a time or a period. */
  static Optional<Moment> of(FhirElement element, String name) {
    return parse(element.text(name + "DateTime"))
        .or(() -> parse(element.text(name + "Instant")))
        .or(() -> parse(element.text(name + "Period", "start")));
  }

  /** A time as FHIR asks for it: with seconds, and an offset of whole minutes. */
  static String written(OffsetDateTime time) {
    int minutes = time.getOffset().getTotalSeconds() / SECONDS;
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
        time.withOffsetSameInstant(ZoneOffset.ofTotalSeconds(minutes * SECONDS)));
  }
}
