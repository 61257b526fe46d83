package cistern.finding;

/**
 * A point that divides values into those under and those over it.
 *
 * @param at the point
 * @param inclusive whether a value equal to it counts as over it
 */
public record Threshold(double at, boolean inclusive) {

  /**
   * Units in the last place by which a few divisions can miss a number that is exactly the limit:
   * 2.8/7 is 0.4, though the machine's quotient is one unit less.
   */
  private static final int ROUNDING = 4;

  /** Over it only when strictly greater. */
  public static Threshold over(double at) {
    return new Threshold(at, false);
  }

  /** Over it when equal or greater. */
  public static Threshold from(double at) {
    return new Threshold(at, true);
  }

  boolean isPassedBy(double value, Approach approach) {
    boolean isEqual =
        value == at || (Double.isFinite(at) && Math.abs(value - at) <= ROUNDING * Math.ulp(at));
    boolean isOver = value > at && !isEqual;
    return switch (approach) {
      case EXACT -> isOver || (inclusive && isEqual);
      case FROM_ABOVE -> isOver || isEqual;
      case FROM_BELOW -> isOver;
    };
  }
}
