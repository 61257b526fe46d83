package cistern.report.wording;

import cistern.fact.Facts;
import cistern.report.look.ReportFacts;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import java.util.Optional;

/**
 * How a paper prints times: one form of dates, one time zone, and its name beside every time.
 *
 * @param locale that orders day and month
 * @param zone of every time; empty while none is chosen, then a time keeps its own
 */
public record PrintedTime(Locale locale, Optional<ZoneId> zone) {

  /** British dates, each time as it was given. */
  public static final PrintedTime AS_GIVEN = new PrintedTime(Locale.UK, Optional.empty());

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final String NO_ZONE = "as-given";

  /** As the local policy chooses; by default British dates and the zone of the times given. */
  public static PrintedTime of(Facts facts) {
    Facts all = ReportFacts.of(facts);
    String zone = all.word("page.time-zone");
    return new PrintedTime(
        Locale.forLanguageTag(all.word("page.locale")),
        zone.equals(NO_ZONE) ? Optional.empty() : Optional.of(ZoneId.of(zone)));
  }

  /** The same in the zone of a time, where none was chosen, so that a paper has one zone. */
  public PrintedTime like(Optional<OffsetDateTime> time) {
    return new PrintedTime(locale, zone.or(() -> time.map(OffsetDateTime::getOffset)));
  }

  /** The day of a time, {@code 9 May 2034}. */
  public String day(OffsetDateTime time) {
    return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG).withLocale(locale).format(in(time));
  }

  /** A time with the name of its zone, {@code 9 May 2034, 10:10 UTC+02:00}. */
  public String at(OffsetDateTime time) {
    return day(time) + ", " + CLOCK.format(in(time)) + " " + name(time);
  }

  /** A time for a figure that names the zone elsewhere, {@code 9 May, 10:10}. */
  public String inShort(OffsetDateTime time) {
    return DateTimeFormatter.ofLocalizedPattern("MMMd").withLocale(locale).format(in(time))
        + ", "
        + CLOCK.format(in(time));
  }

  private OffsetDateTime in(OffsetDateTime time) {
    return zone.map(z -> time.atZoneSameInstant(z).toOffsetDateTime()).orElse(time);
  }

  private String name(OffsetDateTime time) {
    ZoneId own = zone.orElse(time.getOffset());
    if (own instanceof ZoneOffset offset) {
      return offset.getTotalSeconds() == 0 ? "UTC" : "UTC" + offset.getId();
    }
    return "(" + own.getId() + ")";
  }
}
