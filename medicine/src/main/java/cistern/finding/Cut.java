package cistern.finding;

/**
 * A point that divides values into those under and those over it.
 *
 * @param at the point
 * @param inclusive whether a value equal to it counts as over it
 */
public record Cut(double at, boolean inclusive) {

  /** Over it only when strictly greater. */
  public static Cut over(double at) {
    return new Cut(at, false);
  }

  /** Over it when equal or greater. */
  public static Cut from(double at) {
    return new Cut(at, true);
  }

  boolean isPassedBy(double value, Approach approach) {
    return switch (approach) {
      case EXACT -> inclusive ? value >= at : value > at;
      case FROM_ABOVE -> value >= at;
      case FROM_BELOW -> value > at;
    };
  }
}
