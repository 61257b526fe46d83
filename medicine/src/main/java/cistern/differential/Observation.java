package cistern.differential;

/**
 * A trait that was looked for.
 *
 * @param trait what was looked for
 * @param isFound whether it was found
 */
public record Observation(Trait trait, boolean isFound) {

  /** In words. */
  public String toText() {
    return isFound ? trait.term() : "not demonstrated: " + trait.term();
  }
}
