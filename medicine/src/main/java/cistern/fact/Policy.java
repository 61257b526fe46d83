package cistern.fact;

import java.util.Map;

/**
 * What a clinic has decided for itself: facts by key, each with the local source.
 *
 * @param name the policy's name, printed with every result
 * @param changes the changed facts by key, values in the unit of the fact they replace
 */
public record Policy(String name, Map<String, Change> changes) {

  /** Copies the changes. */
  public Policy {
    changes = Map.copyOf(changes);
  }

  /**
   * One changed fact.
   *
   * @param value in the unit of the fact that it replaces
   * @param source who decided it, and where that stands
   */
  public record Change(FactValue value, String source) {}
}
