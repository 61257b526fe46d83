package cistern.panel;

import cistern.measurement.Answer;
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
 * @param looked what was seen in the fluid and how the person lay
 */
public record Draw(
    Optional<OffsetDateTime> at,
    Optional<OffsetDateTime> receivedAt,
    Optional<String> appearance,
    Optional<String> site,
    OptionalDouble volumeMl,
    Looked looked) {

  /** A draw of which only the ordinary is said. */
  public Draw(
      Optional<OffsetDateTime> at,
      Optional<OffsetDateTime> receivedAt,
      Optional<String> appearance,
      Optional<String> site,
      OptionalDouble volumeMl) {
    this(at, receivedAt, appearance, site, volumeMl, Looked.UNKNOWN);
  }

  /** A draw of which nothing is known. */
  public static final Draw UNKNOWN =
      new Draw(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty());

  /** The same with something else seen. */
  public Draw with(Looked seen) {
    return new Draw(at, receivedAt, appearance, site, volumeMl, seen);
  }

  /** A draw at a time. */
  public static Draw at(OffsetDateTime time) {
    return new Draw(
        Optional.of(time),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty());
  }

  /**
   * What was seen in the fluid, and how the person lay.
   *
   * @param clotted whether it clotted by itself
   * @param atypicalCells whether malignant or atypical cells were seen
   * @param position how the person lay or sat at the pressure reading, as given
   */
  public record Looked(Answer clotted, Answer atypicalCells, Optional<String> position) {
    /** Nothing is said. */
    public static final Looked UNKNOWN =
        new Looked(Answer.UNKNOWN, Answer.UNKNOWN, Optional.empty());
  }
}
