package cistern.cli;

import cistern.exchange.json.Json;
import cistern.interpretation.Interpretation;

/**
 * An interpretation and the file that it was made from.
 *
 * @param interpretation what the work-up says
 * @param document the whole work-up, with what was not understood
 */
record Result(Interpretation interpretation, Json.Structure document) {

  /** The id of the work-up. */
  String id() {
    return interpretation.workup().id();
  }
}
