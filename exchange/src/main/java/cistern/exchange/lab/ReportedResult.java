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
   * @param range the laboratory's reference range
   * @param method as written
   * @param absence why there is no value
   * @param units what else is said to be the unit: a text beside its code, a code of another system
   */
  public record Remarks(
      Optional<Moment> measuredAt,
      Optional<Range> range,
      Optional<String> method,
      Optional<String> absence,
      List<String> units) {
    /** Nothing is said. */
    public static final Remarks NONE =
        new Remarks(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of());

    /** Copies the units. */
    public Remarks {
      units = List.copyOf(units);
    }

    Remarks withoutRange() {
      return new Remarks(measuredAt, Optional.empty(), method, absence, units);
    }
  }

  /**
   * A reference range.
   *
   * @param place where it stands
   * @param text as written
   * @param units its own, where they are not part of the text; none when it has that of the value
   */
  public record Range(String place, String text, List<String> units) {

    /** Copies the units. */
    public Range {
      units = List.copyOf(units);
    }
  }

  /** This result with another standing. */
  public ReportedResult in(Standing other) {
    return new ReportedResult(place, codes, specimen, value, unit, other, remarks);
  }

  /** The first of its codes with the name beside it, for a list of the not understood. */
  String name() {
    return codes.isEmpty() ? "" : codes.getFirst().toText();
  }

  /** The first of its codes with its system; the name where there is no code. */
  public String code() {
    return codes.stream()
        .findFirst()
        .map(c -> c.system() + " " + (c.code().isEmpty() ? c.text() : c.code()))
        .orElse("");
  }

  /** Whether another has the same specimen and, where both say it, the same time of its draw. */
  public boolean isOfSameDraw(ReportedResult other) {
    Optional<Moment> at = specimen.collectedAt();
    Optional<Moment> otherAt = other.specimen.collectedAt();
    return specimen.words().equals(other.specimen.words())
        && (at.isEmpty() || otherAt.isEmpty() || at.equals(otherAt));
  }

  ReportedResult withoutRange() {
    return new ReportedResult(
        place, codes, specimen, value, unit, standing, remarks.withoutRange());
  }
}
