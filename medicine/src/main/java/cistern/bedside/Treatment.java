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
public record Treatment(String drug, Optional<OffsetDateTime> from, Optional<OffsetDateTime> to) {}
