package cistern.exchange.lab;

import cistern.exchange.json.Json;
import java.util.Map;

/**
 * A work-up made from a report, before it is judged like any other.
 *
 * @param document as a work-up file would hold it
 * @param places where a part of it stood in the report, by its JSON path
 */
public record Composed(Json.Structure document, Map<String, String> places) {

  /** Copies the places. */
  public Composed {
    places = Map.copyOf(places);
  }
}
