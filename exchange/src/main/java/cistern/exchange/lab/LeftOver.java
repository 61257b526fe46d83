package cistern.exchange.lab;

import cistern.exchange.json.Json;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Stream;

/**
 * Something in a report that has no part in the work-up: kept as it was sent, and listed.
 *
 * @param place where it stands in the report
 * @param why the reason
 * @param what the code or the name; never a value
 * @param value as sent; may be empty
 * @param unit as sent; may be empty
 */
public record LeftOver(String place, Why why, String what, String value, String unit) {

  /** The field of a work-up that lists them. */
  public static final String FIELD = "leftOver";

  /** Why something is not used. */
  public enum Why {
    UNKNOWN_CODE("unknown-code", "It is not known here what this measures."),
    SPECIMEN_UNCLEAR(
        "specimen-unclear", "Neither the specimen nor the code says which fluid it is."),
    OTHER_SPECIMEN("other-specimen", "The specimen is neither CSF, serum nor blood."),
    UNIT_MISSING("unit-missing", "No unit was sent, and none is guessed."),
    UNIT_UNKNOWN(
        "unit-not-understood",
        "The unit is not one that this analyte is measured in, or two are said that differ."),
    VALUE_UNCLEAR("value-not-understood", "The value is neither a number nor a limit."),
    COMMA_UNCLEAR("comma-unclear", "The comma may part thousands or be a decimal one: say which."),
    NO_VALUE("no-value", "There is no value."),
    CANCELLED("cancelled", "It was cancelled or withdrawn."),
    AWAITED("awaited", "It is not there yet."),
    REPLACED("replaced", "A later result of the same report replaces it."),
    OTHER_DRAW("other-draw", "It belongs to another draw than the one used."),
    COMPUTED("computed-here", "This is computed here from what was measured."),
    REPEATED("repeated", "The same value stands elsewhere in the report."),
    TIME_UNCLEAR(
        "time-unclear", "The time has no offset from UTC, or no time of day: name the zone."),
    DATE_UNCLEAR("date-unclear", "The date can be read in two ways: say which comes first."),
    AGAINST_CODE(
        "specimen-against-code", "Specimen and code name two fluids; the specimen is used."),
    NOTE("note", "A note of the laboratory, not read as a result."),
    NOT_A_RESULT("not-a-result", "This part of the report is not understood."),
    ENCODING("encoding-assumed", "The encoding was not declared; Windows-1252 was taken."),
    HEADINGS(
        "headings-not-confirmed",
        "The headings were read by their names; no person has" + " confirmed a mapping.");

    private final String key;
    private final String sentence;

    Why(String key, String sentence) {
      this.key = key;
      this.sentence = sentence;
    }

    /** The name in files. */
    public String key() {
      return key;
    }

    /** The reason in a sentence. */
    public String sentence() {
      return sentence;
    }

    /** The reason of a name in a file. */
    public static Optional<Why> parse(String key) {
      for (Why why : values()) {
        if (why.key.equals(key)) {
          return Optional.of(why);
        }
      }
      return Optional.empty();
    }
  }

  /** A result that is not used, and why; without a value, with the sender's reason for that. */
  static LeftOver of(ReportedResult result, Why why) {
    boolean isAbsent = result.value().isBlank();
    String value = isAbsent ? result.remarks().absence().orElse("") : result.value();
    return new LeftOver(result.place(), why, result.name(), value, result.unit());
  }

  /** A result whose units differ in size. */
  static LeftOver ofUnits(ReportedResult result, List<String> units) {
    return new LeftOver(
        result.place(), Why.UNIT_UNKNOWN, result.name(), result.value(), String.join(", ", units));
  }

  /** A reference range in another unit than the value. */
  static LeftOver ofRange(ReportedResult result, ReportedResult.Range range) {
    List<String> units = Stream.concat(range.units().stream(), Stream.of(result.unit())).toList();
    return new LeftOver(
        range.place(), Why.UNIT_UNKNOWN, result.name(), range.text(), String.join(", ", units));
  }

  /** As an entry of a work-up. */
  Json toJson() {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("place", new Json.Text(place));
    members.put("why", new Json.Text(why.key()));
    for (Map.Entry<String, String> part :
        Map.of("what", what, "value", value, "unit", unit).entrySet().stream()
            .sorted(Map.Entry.comparingByKey(java.util.Comparator.reverseOrder()))
            .toList()) {
      if (!part.getValue().isEmpty()) {
        members.put(part.getKey(), new Json.Text(part.getValue()));
      }
    }
    return new Json.Structure(members);
  }
}
