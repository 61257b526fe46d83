package cistern.panel;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How and when one fluid was taken.
 *
 * @param at when it was taken
 * @param receivedAt when the laboratory had it
 * @param appearance as described
 * @param site where CSF was taken
 * @param volumeMl how much, mL
 */
public record Draw(
    Optional<OffsetDateTime> at,
    Optional<OffsetDateTime> receivedAt,
    Optional<String> appearance,
    Optional<String> site,
    OptionalDouble volumeMl) {

  /** A draw of which nothing is known. */
  public static final Draw UNKNOWN =
      new Draw(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty());

  /** A draw at a time. */
  public static Draw at(OffsetDateTime time) {
    return new Draw(
        Optional.of(time),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty());
  }
}
