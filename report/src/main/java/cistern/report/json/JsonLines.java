package cistern.report.json;

import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.BiConsumer;
import tools.jackson.core.JsonGenerator;

/** Fields that many blocks share, written the same way everywhere. */
public final class JsonLines {

  private JsonLines() {}

  static <T> void list(
      JsonGenerator json, String name, List<T> items, BiConsumer<JsonGenerator, T> writer) {
    json.writeName(name);
    json.writeStartArray();
    items.forEach(item -> writer.accept(json, item));
    json.writeEndArray();
  }

  /** A list of texts. */
  public static void strings(JsonGenerator json, String name, List<String> values) {
    json.writeName(name);
    json.writeStartArray();
    values.forEach(json::writeString);
    json.writeEndArray();
  }

  /** The weakest status and all sources. */
  public static void grounds(JsonGenerator json, Grounds grounds) {
    json.writeStringProperty("status", grounds.status().word());
    strings(json, "sources", grounds.sources());
  }

  /** A text, or null. */
  public static void orNull(JsonGenerator json, String name, Optional<String> value) {
    if (value.isPresent()) {
      json.writeStringProperty(name, value.get());
    } else {
      json.writeNullProperty(name);
    }
  }

  /** A number, or null. */
  public static void orNull(JsonGenerator json, String name, OptionalDouble value) {
    if (value.isPresent()) {
      json.writeNumberProperty(name, value.getAsDouble());
    } else {
      json.writeNullProperty(name);
    }
  }

  /** A whole number, or null. */
  public static void orNull(JsonGenerator json, String name, OptionalInt value) {
    if (value.isPresent()) {
      json.writeNumberProperty(name, value.getAsInt());
    } else {
      json.writeNullProperty(name);
    }
  }
}
