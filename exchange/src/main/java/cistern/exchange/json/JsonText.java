package cistern.exchange.json;

import java.util.Iterator;
import java.util.Map;

/** A JSON value as text, as it was read: numbers digit by digit, members in their order. */
public final class JsonText {

  private static final String INDENT = "  ";

  private final StringBuilder out = new StringBuilder();

  private JsonText() {}

  /** The text of a value, indented, ending with a line break. */
  public static String of(Json json) {
    JsonText text = new JsonText();
    text.write(json, "\n");
    return text.out.append('\n').toString();
  }

  private void write(Json json, String margin) {
    switch (json) {
      case Json.Structure structure -> write(structure, margin);
      case Json.Sequence sequence -> write(sequence, margin);
      case Json.Text text -> quoted(text.value());
      case Json.Numeral numeral -> out.append(numeral.literal());
      case Json.Truth truth -> out.append(truth.value());
      case Json.Nothing nothing -> out.append("null");
      case Json.NotJson notJson -> out.append("null");
    }
  }

  private void write(Json.Structure structure, String margin) {
    String inner = margin + INDENT;
    out.append('{');
    Iterator<Map.Entry<String, Json>> members = structure.members().entrySet().iterator();
    while (members.hasNext()) {
      Map.Entry<String, Json> member = members.next();
      out.append(inner);
      quoted(member.getKey());
      out.append(": ");
      write(member.getValue(), inner);
      out.append(members.hasNext() ? "," : margin);
    }
    out.append('}');
  }

  private void write(Json.Sequence sequence, String margin) {
    String inner = margin + INDENT;
    out.append('[');
    Iterator<Json> items = sequence.items().iterator();
    while (items.hasNext()) {
      out.append(inner);
      write(items.next(), inner);
      out.append(items.hasNext() ? "," : margin);
    }
    out.append(']');
  }

  private void quoted(String text) {
    out.append('"');
    text.chars()
        .forEach(
            c -> {
              switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\t' -> out.append("\\t");
                default -> {
                  if (c < ' ') {
                    out.append("\\u%04x".formatted(c));
                  } else {
                    out.append((char) c);
                  }
                }
              }
            });
    out.append('"');
  }
}
