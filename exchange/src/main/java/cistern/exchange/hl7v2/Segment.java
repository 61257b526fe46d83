package cistern.exchange.hl7v2;

import java.util.List;

/**
 * One line of a message.
 *
 * @param line its number in the input, from 1
 * @param fields the raw fields, the name first; in a header field 1 is the field separator itself
 * @param delimiters of its message
 */
record Segment(int line, List<String> fields, Delimiters delimiters) {

  /** Copies the fields. */
  Segment {
    fields = List.copyOf(fields);
  }

  /** The segment of a line. */
  static Segment of(String text, int line, Delimiters delimiters) {
    List<String> fields = Delimiters.split(text, delimiters.field());
    if (text.startsWith("MSH")) {
      fields.add(1, String.valueOf(delimiters.field()));
    }
    return new Segment(line, fields, delimiters);
  }

  String name() {
    return fields.getFirst();
  }

  /** Where the segment stands. */
  String place() {
    return name() + " (line " + line + ")";
  }

  /** Where one of its fields stands. */
  String place(int field) {
    return name() + "-" + field + " (line " + line + ")";
  }

  /** A field as it stands there; empty when there is none. */
  String raw(int field) {
    String raw = field < fields.size() ? fields.get(field) : "";
    return raw.equals("\"\"") ? "" : raw;
  }

  /** The repetitions of a field, each as it stands there. */
  List<String> repetitions(int field) {
    return Delimiters.split(raw(field), delimiters.repetition());
  }

  /** A component of the first repetition of a field, without escapes. */
  String component(int field, int component) {
    return component(repetitions(field).getFirst(), component);
  }

  /** A component of a repetition; of its subcomponents the first. */
  String component(String repetition, int component) {
    List<String> components = Delimiters.split(repetition, delimiters.component());
    String raw = component <= components.size() ? components.get(component - 1) : "";
    return delimiters
        .unescaped(Delimiters.split(raw, delimiters.subcomponent()).getFirst())
        .strip();
  }

  /** A whole field as text: its components with blanks, without escapes. */
  String text(int field) {
    return delimiters.unescaped(raw(field)).strip();
  }
}
