package cistern.clinic.figures;

import java.time.YearMonth;
import java.util.Optional;
import java.util.Set;

/**
 * Which punctures are put together, and who counts as what.
 *
 * @param from the first month of the draw
 * @param to the last month of the draw
 * @param controls the final diagnoses that count as without the disease
 * @param cases the final diagnoses that count as with it
 */
record Choice(
    Optional<YearMonth> from, Optional<YearMonth> to, Set<String> controls, Set<String> cases) {

  /** Every puncture, and nobody in a group. */
  static final Choice ALL = new Choice(Optional.empty(), Optional.empty(), Set.of(), Set.of());

  Choice {
    controls = Set.copyOf(controls);
    cases = Set.copyOf(cases);
  }

  /** Whether a puncture of a month is meant; one without a month only where none is asked for. */
  boolean holds(Optional<YearMonth> month) {
    return month
        .map(m -> from.filter(m::isBefore).isEmpty() && to.filter(m::isAfter).isEmpty())
        .orElse(from.isEmpty() && to.isEmpty());
  }
}
