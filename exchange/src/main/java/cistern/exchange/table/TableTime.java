package cistern.exchange.table;

import cistern.exchange.lab.LocalMapping.DateOrder;
import cistern.exchange.lab.Moment;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Dates and times in tables. A date that does not begin with its year is read only when told how.
 */
final class TableTime {

  private static final Pattern ISO =
      Pattern.compile(
          "(\\d{4})-?(\\d{2})-?(\\d{2})(?:[T ]+(\\d{1,2}):?(\\d{2})(?::?(\\d{2})(?:\\.\\d+)?)?)?"
              + "\\s*(Z|[+-]\\d{2}:?\\d{2})?");
  private static final Pattern OTHER =
      Pattern.compile(
          "(\\d{1,2})[./-](\\d{1,2})[./-](\\d{4})(?:[,T ]+(\\d{1,2})[:.](\\d{2})(?::(\\d{2}))?)?"
              + "\\s*(Z|[+-]\\d{2}:?\\d{2})?");

  private TableTime() {}

  static Optional<Moment> parse(String text, DateOrder order) {
    try {
      Matcher iso = ISO.matcher(text.strip());
      if (iso.matches()) {
        return Optional.of(moment(day(iso, 1, 2, 3), iso));
      }
      Matcher other = OTHER.matcher(text.strip());
      if (!other.matches()) {
        return Optional.empty();
      }
      return switch (order) {
        case DAY_FIRST -> Optional.of(moment(day(other, 3, 2, 1), other));
        case MONTH_FIRST -> Optional.of(moment(day(other, 3, 1, 2), other));
        case UNTOLD -> Optional.empty();
      };
    } catch (DateTimeException noSuchDay) {
      return Optional.empty();
    }
  }

  private static LocalDate day(Matcher form, int year, int month, int day) {
    return LocalDate.of(
        Integer.parseInt(form.group(year)),
        Integer.parseInt(form.group(month)),
        Integer.parseInt(form.group(day)));
  }

  private static Moment moment(LocalDate day, Matcher form) {
    if (form.group(4) == null) {
      return Moment.of(day);
    }
    String seconds = form.group(6);
    LocalDateTime time =
        day.atTime(
            Integer.parseInt(form.group(4)),
            Integer.parseInt(form.group(5)),
            seconds == null ? 0 : Integer.parseInt(seconds));
    String offset = form.group(7);
    if (offset == null) {
      return Moment.of(time);
    }
    String colon =
        offset.length() == 5 ? offset.substring(0, 3) + ":" + offset.substring(3) : offset;
    return Moment.of(OffsetDateTime.of(time, java.time.ZoneOffset.of(colon)));
  }
}
