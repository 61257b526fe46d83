package cistern.report.json;

import cistern.fact.Grounds;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import tools.jackson.core.JsonGenerator;

/** A JSON object while it is written, one field after another; numbers are not rounded. */
public final class JsonObject {

  private final JsonGenerator json;

  private JsonObject(JsonGenerator json) {
    this.json = json;
  }

  /** Writes one object. */
  public static void write(JsonGenerator json, Consumer<JsonObject> fields) {
    json.writeStartObject();
    fields.accept(new JsonObject(json));
    json.writeEndObject();
  }

  /** Writes an array of objects. */
  public static <T> void write(
      JsonGenerator json, Collection<T> items, BiConsumer<JsonObject, T> fields) {
    json.writeStartArray();
    items.forEach(item -> write(json, object -> fields.accept(object, item)));
    json.writeEndArray();
  }

  /** A text. */
  public void with(String name, String value) {
    json.writeStringProperty(name, value);
  }

  /** A number. */
  public void with(String name, double value) {
    json.writeNumberProperty(name, value);
  }

  /** A whole number. */
  public void with(String name, int value) {
    json.writeNumberProperty(name, value);
  }

  /** Yes or no. */
  public void with(String name, boolean value) {
    json.writeBooleanProperty(name, value);
  }

  /** A text, or null. */
  public void with(String name, Optional<String> value) {
    value.ifPresentOrElse(text -> with(name, text), () -> nothing(name));
  }

  /** A number, or null. */
  public void with(String name, OptionalDouble value) {
    value.ifPresentOrElse(number -> with(name, number), () -> nothing(name));
  }

  /** A whole number, or null. */
  public void with(String name, OptionalInt value) {
    value.ifPresentOrElse(number -> with(name, number), () -> nothing(name));
  }

  /** Null. */
  public void nothing(String name) {
    json.writeNullProperty(name);
  }

  /** An object. */
  public void object(String name, Consumer<JsonObject> fields) {
    json.writeName(name);
    write(json, fields);
  }

  /** An object, or null. */
  public <T> void object(String name, Optional<T> item, BiConsumer<JsonObject, T> fields) {
    item.ifPresentOrElse(
        i -> object(name, object -> fields.accept(object, i)), () -> nothing(name));
  }

  /** A list of objects. */
  public <T> void list(String name, List<T> items, BiConsumer<JsonObject, T> fields) {
    json.writeName(name);
    write(json, items, fields);
  }

  /** A list of objects that say their rank, from 1, before their fields. */
  public <T> void ranked(String name, List<T> items, BiConsumer<JsonObject, T> fields) {
    json.writeName(name);
    json.writeStartArray();
    for (int i = 0; i < items.size(); i++) {
      int rank = i;
      write(
          json,
          object -> {
            object.with("rank", rank + 1);
            fields.accept(object, items.get(rank));
          });
    }
    json.writeEndArray();
  }

  /** A list of texts. */
  public void strings(String name, List<String> values) {
    strings(name, values, Function.identity());
  }

  /** A list of the texts of some things. */
  public <T> void strings(String name, Collection<T> things, Function<T, String> text) {
    json.writeName(name);
    strings(things, text);
  }

  /** A list of lists of the texts of some things. */
  public <T> void sets(String name, List<List<T>> sets, Function<T, String> text) {
    json.writeName(name);
    json.writeStartArray();
    sets.forEach(set -> strings(set, text));
    json.writeEndArray();
  }

  private <T> void strings(Collection<T> things, Function<T, String> text) {
    json.writeStartArray();
    for (T thing : things) {
      json.writeString(text.apply(thing));
    }
    json.writeEndArray();
  }

  /** A list of numbers; one without an end is null. */
  public void numbers(String name, double... values) {
    json.writeName(name);
    json.writeStartArray();
    for (double value : values) {
      if (Double.isInfinite(value)) {
        json.writeNull();
      } else {
        json.writeNumber(value);
      }
    }
    json.writeEndArray();
  }

  /** The weakest status and all sources. */
  public void grounds(Grounds grounds) {
    with("status", grounds.status().word());
    strings("sources", grounds.sources());
  }
}
