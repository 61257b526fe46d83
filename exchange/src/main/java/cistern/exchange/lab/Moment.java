package cistern.exchange.lab;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/**
 * A time as a laboratory sends it, perhaps without a zone or without a time of day.
 *
 * @param local by the laboratory's clock; midnight when only a day is known
 * @param offset from UTC, if it was sent or told
 * @param isDayOnly whether no time of day was sent
 */
public record Moment(LocalDateTime local, Optional<ZoneOffset> offset, boolean isDayOnly) {

  private static final DateTimeFormatter TEXT = DateTimeFormatter.ISO_OFFSET_DATE_TIME;

  /** A day without a time. */
  public static Moment of(LocalDate day) {
    return new Moment(day.atStartOfDay(), Optional.empty(), true);
  }

  /** A time with its offset. */
  public static Moment of(OffsetDateTime time) {
    return new Moment(time.toLocalDateTime(), Optional.of(time.getOffset()), false);
  }

  /** A time by the laboratory's clock. */
  public static Moment of(LocalDateTime time) {
    return new Moment(time, Optional.empty(), false);
  }

  /** This time in a zone that a person named, when it was sent without one. */
  public Moment in(Optional<ZoneId> zone) {
    return offset.isPresent() || isDayOnly
        ? this
        : new Moment(local, zone.map(z -> z.getRules().getOffset(local)), false);
  }

  /** The time as a work-up writes it; empty without a time of day or an offset. */
  public Optional<String> toText() {
    return isDayOnly ? Optional.empty() : offset.map(o -> TEXT.format(local.atOffset(o)));
  }

  /** The hours from this to another, by the clock of each when an offset is unknown. */
  double hoursTo(Moment other) {
    LocalDateTime here = offset.isPresent() && other.offset.isPresent() ? utc() : local;
    LocalDateTime there =
        offset.isPresent() && other.offset.isPresent() ? other.utc() : other.local;
    return java.time.Duration.between(here, there).toSeconds() / 3600.0;
  }

  private LocalDateTime utc() {
    return local.minusSeconds(offset.orElse(ZoneOffset.UTC).getTotalSeconds());
  }
}
