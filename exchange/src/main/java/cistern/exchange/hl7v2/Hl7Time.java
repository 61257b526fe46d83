package cistern.exchange.hl7v2;

import cistern.exchange.lab.Moment;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times of HL7 v2: {@code YYYYMMDD[HHMM[SS[.SSSS]]][+/-ZZZZ]}. */
final class Hl7Time {

  /** Of a second, at most. */
  private static final int DIGITS = 4;

  private static final Pattern FORM =
      Pattern.compile(
          "(\\d{4})(\\d{2})(\\d{2})(?:(\\d{2})(?:(\\d{2})(?:(\\d{2})(?:\\.(\\d{1,4}))?)?)?)?"
              + "([+-]\\d{4})?");
  private static final DateTimeFormatter WRITTEN =
      new DateTimeFormatterBuilder()
          .appendPattern("uuuuMMddHHmmss")
          .appendFraction(ChronoField.NANO_OF_SECOND, 0, DIGITS, true)
          .toFormatter(Locale.ROOT);

  private Hl7Time() {}

  /**
   * The time of a field; one without an offset has that of the message, if it has one. Of an hour
   * without minutes only the day is known.
   */
  static Optional<Moment> parse(String text, Optional<ZoneOffset> ofMessage) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      return Optional.empty();
    }
    try {
      LocalDate day = LocalDate.of(number(form, 1), number(form, 2), number(form, 3));
      if (form.group(5) == null) {
        return Optional.of(Moment.of(day));
      }
      int second = form.group(6) == null ? 0 : number(form, 6);
      LocalDateTime time = day.atTime(number(form, 4), number(form, 5), second, nanos(form));
      Optional<ZoneOffset> own = Optional.ofNullable(form.group(8)).map(ZoneOffset::of);
      return Optional.of(new Moment(time, own.or(() -> ofMessage), false));
    } catch (DateTimeException noSuchDay) {
      return Optional.empty();
    }
  }

  private static int nanos(Matcher form) {
    String digits = form.group(7) == null ? "" : form.group(7);
    return Integer.parseInt((digits + "000000000").substring(0, 9));
  }

  private static int number(Matcher form, int group) {
    return Integer.parseInt(form.group(group));
  }

  /** The offset of a time, if it has one. */
  static Optional<ZoneOffset> offset(String text) {
    return parse(text, Optional.empty()).flatMap(Moment::offset);
  }

  /** A time with its offset, to a ten-thousandth of a second. */
  static String of(java.time.OffsetDateTime time) {
    int minutes = time.getOffset().getTotalSeconds() / 60;
    String sign = minutes < 0 ? "-" : "+";
    int size = Math.abs(minutes);
    return WRITTEN.format(time) + sign + "%02d%02d".formatted(size / 60, size % 60);
  }
}
