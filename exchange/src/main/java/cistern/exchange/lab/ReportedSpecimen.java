package cistern.exchange.lab;

import java.util.List;
import java.util.Optional;

/**
 * A specimen as the report names it.
 *
 * @param words codes and names that may say which fluid it is
 * @param collectedAt when it was taken
 * @param receivedAt when the laboratory had it
 */
public record ReportedSpecimen(
    List<String> words, Optional<Moment> collectedAt, Optional<Moment> receivedAt) {

  /** Nothing is said of the specimen. */
  public static final ReportedSpecimen UNKNOWN =
      new ReportedSpecimen(List.of(), Optional.empty(), Optional.empty());

  /** Copies the words. */
  public ReportedSpecimen {
    words = List.copyOf(words);
  }

  /** A specimen of which only names are known. */
  public static ReportedSpecimen of(String... words) {
    return new ReportedSpecimen(List.of(words), Optional.empty(), Optional.empty());
  }

  /** This specimen, taken at a time unless its own is known. */
  public ReportedSpecimen takenAt(Optional<Moment> time) {
    return new ReportedSpecimen(words, collectedAt.or(() -> time), receivedAt);
  }
}
