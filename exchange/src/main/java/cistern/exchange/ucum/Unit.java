package cistern.exchange.ucum;

/**
 * A unit reduced to the ones that it consists of.
 *
 * @param factor how many of them it is
 * @param dimension what it measures
 */
record Unit(Ratio factor, Dimension dimension) {

  static final Unit ONE = new Unit(Ratio.ONE, Dimension.NONE);

  /** This times a power of another. */
  Unit times(Unit other, int exponent) {
    return new Unit(
        factor.times(other.factor.power(exponent)), dimension.times(other.dimension, exponent));
  }
}
