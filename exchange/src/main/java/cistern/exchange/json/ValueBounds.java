package cistern.exchange.json;

import cistern.fact.Facts;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * Between what numbers and times must lie. Beyond these nothing is measured, and what computes with
 * them may overflow or never end.
 *
 * @param least the smallest number over zero, in the canonical unit
 * @param most the largest number, in the canonical unit of what it counts or measures
 * @param firstYear the first year of a time
 * @param lastYear the last year of a time, included
 */
public record ValueBounds(double least, double most, int firstYear, int lastYear) {

  /** The bounds of some facts. */
  public static ValueBounds of(Facts facts) {
    return new ValueBounds(
        facts.number("input.number-least"),
        facts.number("input.number-most"),
        (int) facts.number("input.first-year"),
        (int) facts.number("input.last-year"));
  }

  /** Why a number lies beyond, if it does. */
  Optional<InputTrouble> trouble(double number) {
    if (!(Math.abs(number) <= most)) {
      return Optional.of(InputTrouble.TOO_LARGE_NUMBER);
    }
    return number != 0 && Math.abs(number) < least
        ? Optional.of(InputTrouble.TOO_SMALL)
        : Optional.empty();
  }

  /** A time that lies within. */
  Optional<OffsetDateTime> within(OffsetDateTime time) {
    return time.getYear() < firstYear || time.getYear() > lastYear
        ? Optional.empty()
        : Optional.of(time);
  }

  /** The largest number as a sentence shows it. */
  String mostText() {
    return "%,.0f".formatted(most);
  }
}
