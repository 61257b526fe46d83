package cistern.bedside;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * A drug or a procedure that the person has had.
 *
 * @param drug as named in the work-up
 * @param from when it began
 * @param to when it ended; empty while it goes on, or when nobody knows
 */
public record Treatment(String drug, Optional<OffsetDateTime> from, Optional<OffsetDateTime> to) {

  /** Whether it is of a kind, by its name. */
  public boolean is(TreatmentKind kind) {
    return TreatmentKind.of(drug).filter(k -> k == kind).isPresent();
  }

  /** Whether it can have begun before a time; true unless both times are known otherwise. */
  public boolean isBefore(Optional<OffsetDateTime> time) {
    return from.isEmpty() || time.isEmpty() || from.get().isBefore(time.get());
  }
}
