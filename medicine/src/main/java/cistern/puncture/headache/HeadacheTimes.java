package cistern.puncture.headache;

import cistern.puncture.procedure.HeadacheRecord;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When a headache began and ended, as far as the times are known.
 *
 * @param punctureAt when the dura was punctured
 * @param onsetAt when it began
 * @param endedAt when it was gone
 * @param asOf when it is looked at
 */
public record HeadacheTimes(
    Optional<OffsetDateTime> punctureAt,
    Optional<OffsetDateTime> onsetAt,
    Optional<OffsetDateTime> endedAt,
    Optional<OffsetDateTime> asOf) {

  private static final double MILLIS_PER_HOUR = 3_600_000;
  private static final double HOURS_PER_DAY = 24;

  /** The times of a headache after a puncture. */
  public static HeadacheTimes of(
      HeadacheRecord headache, Optional<OffsetDateTime> punctureAt, Optional<OffsetDateTime> asOf) {
    return new HeadacheTimes(punctureAt, headache.onsetAt(), headache.endedAt(), asOf);
  }

  /** Days from the puncture to the onset; negative when it began before. */
  public OptionalDouble daysToOnset() {
    return days(punctureAt, onsetAt);
  }

  /** The day of the onset, 0 that of the puncture: the later of whole days and calendar days. */
  public OptionalDouble dayOfOnset() {
    OptionalDouble elapsed = daysToOnset();
    if (elapsed.isEmpty() || elapsed.getAsDouble() < 0) {
      return elapsed;
    }
    OffsetDateTime at = punctureAt.orElseThrow();
    OffsetDateTime onset = onsetAt.orElseThrow().withOffsetSameInstant(at.getOffset());
    long calendar = ChronoUnit.DAYS.between(at.toLocalDate(), onset.toLocalDate());
    return OptionalDouble.of(Math.max(Math.floor(elapsed.getAsDouble()), (double) calendar));
  }

  /** Days it lasted, when it is over. */
  public OptionalDouble daysLasted() {
    return days(onsetAt, endedAt);
  }

  /** Days since the onset while it lasts. */
  public OptionalDouble daysSoFar() {
    return endedAt.isPresent() ? OptionalDouble.empty() : days(onsetAt, asOf);
  }

  /** Hours since the onset while it lasts. */
  public OptionalDouble hoursSoFar() {
    OptionalDouble days = daysSoFar();
    return days.isPresent()
        ? OptionalDouble.of(days.getAsDouble() * HOURS_PER_DAY)
        : OptionalDouble.empty();
  }

  private static OptionalDouble days(
      Optional<OffsetDateTime> from, Optional<OffsetDateTime> until) {
    if (from.isEmpty() || until.isEmpty()) {
      return OptionalDouble.empty();
    }
    double hours = Duration.between(from.get(), until.get()).toMillis() / MILLIS_PER_HOUR;
    return OptionalDouble.of(hours / HOURS_PER_DAY);
  }
}
