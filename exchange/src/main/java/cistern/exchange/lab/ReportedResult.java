package cistern.exchange.lab;

import java.util.List;
import java.util.Optional;

/**
 * One result as the report gives it, nothing of it interpreted.
 *
 * @param place where it stands: segment and field, FHIR path, or row and column
 * @param codes every code and name of what was measured
 * @param specimen what it was measured in
 * @param value as written, with the sign of a limit ({@code <0.3}); empty when there is none
 * @param unit as written; empty when there is none
 * @param standing how final it is
 * @param remarks what else was said of it
 */
public record ReportedResult(
    String place,
    List<Coding> codes,
    ReportedSpecimen specimen,
    String value,
    String unit,
    Standing standing,
    Remarks remarks) {

  /** Copies the codes. */
  public ReportedResult {
    codes = List.copyOf(codes);
  }

  /** How final a result is. */
  public enum Standing {
    FINAL("final"),
    PRELIMINARY("preliminary"),
    /** Replaces a result that was sent before. */
    AMENDED("amended"),
    /** Not measured, or withdrawn: never used. */
    CANCELLED("cancelled"),
    /** Ordered, and not there yet: never used. */
    AWAITED("awaited");

    private final String word;

    Standing(String word) {
      this.word = word;
    }

    /** The word in a work-up. */
    public String word() {
      return word;
    }

    /** Whether there is a result to be used. */
    public boolean isUsable() {
      return this == FINAL || this == PRELIMINARY || this == AMENDED;
    }
  }

  /**
   * What is said beside a result.
   *
   * @param measuredAt when it was measured
   * @param range the laboratory's reference range, as written
   * @param method as written
   * @param absence why there is no value
   */
  public record Remarks(
      Optional<Moment> measuredAt,
      Optional<String> range,
      Optional<String> method,
      Optional<String> absence) {
    /** Nothing is said. */
    public static final Remarks NONE =
        new Remarks(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }
}
