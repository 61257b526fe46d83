package cistern.report.json;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import tools.jackson.core.JsonGenerator;

/** The facts in force as a JSON array. */
public final class FactsJson {

  private FactsJson() {}

  /** Writes all facts; a changed one holds the standard value beside the local one. */
  public static void write(JsonGenerator json, Facts facts) {
    json.writeStartArray();
    facts.all().forEach(fact -> fact(json, fact));
    json.writeEndArray();
  }

  private static void fact(JsonGenerator json, Fact fact) {
    json.writeStartObject();
    json.writeStringProperty("key", fact.key());
    value(json, "value", fact.value());
    json.writeStringProperty("unit", fact.unit());
    json.writeStringProperty("status", fact.status().word());
    json.writeStringProperty("source", fact.source());
    json.writeStringProperty("place", fact.place());
    json.writeBooleanProperty("changed", fact.isChanged());
    fact.standard().ifPresent(standard -> value(json, "standard", standard));
    json.writeEndObject();
  }

  private static void value(JsonGenerator json, String name, FactValue value) {
    switch (value) {
      case FactValue.Figure figure -> json.writeNumberProperty(name, figure.value());
      case FactValue.Word word -> json.writeStringProperty(name, word.value());
    }
  }
}
