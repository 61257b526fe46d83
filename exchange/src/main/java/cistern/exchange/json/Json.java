package cistern.exchange.json;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;

/** A JSON value exactly as it was written, so that nothing is lost when it is written again. */
public sealed interface Json {

  /** What kind of value it is, for a sentence. */
  default String kind() {
    return switch (this) {
      case Structure structure -> "an object { }";
      case Sequence sequence -> "a list [ ]";
      case Text text -> "a text";
      case Numeral numeral -> "a number";
      case Truth truth -> "true or false";
      case Nothing nothing -> "null";
      case NotJson notJson -> "not JSON";
    };
  }

  /**
   * An object.
   *
   * @param members by name, in the order of the file
   */
  record Structure(SequencedMap<String, Json> members) implements Json {
    /** Copies the members. */
    public Structure {
      members = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(members));
    }
  }

  /**
   * A list.
   *
   * @param items in the order of the file
   */
  record Sequence(List<Json> items) implements Json {
    /** Copies the items. */
    public Sequence {
      items = List.copyOf(items);
    }
  }

  /**
   * A text.
   *
   * @param value without escapes
   */
  record Text(String value) implements Json {}

  /**
   * A number.
   *
   * @param literal as written, of any length and size
   */
  record Numeral(String literal) implements Json {}

  /**
   * True or false.
   *
   * @param value which of both
   */
  record Truth(boolean value) implements Json {}

  /** The word {@code null}. */
  record Nothing() implements Json {}

  /** A word that JSON does not have, such as {@code NaN}; the reader has reported it already. */
  record NotJson() implements Json {}
}
