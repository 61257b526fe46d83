package cistern.exchange.deidentified;

import cistern.exchange.json.Json;
import java.util.List;

/**
 * A work-up without what names its person.
 *
 * @param document what is kept, marked {@code deidentified}
 * @param leftOut the places of what is not kept, without any value
 * @param hasPerson whether a person's id tied it to others of the same person
 */
public record Deidentified(Json.Structure document, List<String> leftOut, boolean hasPerson) {

  /** Copies the places. */
  public Deidentified {
    leftOut = List.copyOf(leftOut);
  }
}
