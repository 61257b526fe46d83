package cistern.report.json;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Reference;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** The facts in force as a JSON array. */
public final class FactsJson {

  private FactsJson() {}

  /** Writes all facts; a changed one holds the standard value beside the local one. */
  public static void write(JsonGenerator json, Facts facts) {
    JsonObject.write(json, facts.all(), FactsJson::fact);
  }

  private static void fact(JsonObject json, Fact fact) {
    json.with("key", fact.key());
    value(json, "value", fact.value());
    json.with("unit", fact.unit());
    json.with("status", fact.status().word());
    json.with("source", fact.source());
    json.with("place", fact.place());
    json.with("reference", reference(fact));
    json.with("changed", fact.isChanged());
    fact.standard().ifPresent(standard -> value(json, "standard", standard));
  }

  /** Where to find what it cites: DOI, PubMed, ISBN or address; nothing where nothing is cited. */
  private static Optional<String> reference(Fact fact) {
    return fact.cited().references().stream()
        .map(Reference::address)
        .reduce((one, other) -> one + "; " + other);
  }

  private static void value(JsonObject json, String name, FactValue value) {
    switch (value) {
      case FactValue.Figure figure -> json.with(name, figure.value());
      case FactValue.Word word -> json.with(name, word.value());
      case FactValue.Unit unit -> json.with(name, unit.written());
    }
  }
}
