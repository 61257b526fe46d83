package cistern.barrier;

import cistern.fact.Facts;

/**
 * A quotient as a hyperbolic function of the albumin quotient, Q = (a/b)·√(QAlb² + b²) − c, all
 * plain ratios (Reiber, doi 10.1186/s12987-017-0063-4, figure 1).
 *
 * @param slope a/b
 * @param bSquared b²
 * @param c c
 */
public record Hyperbola(double slope, double bSquared, double c) {

  /** The curve whose constants stand under a key. */
  static Hyperbola of(Facts facts, String key) {
    return new Hyperbola(
        facts.number(key + ".slope"), facts.number(key + ".b-squared"), facts.number(key + ".c"));
  }

  /** The quotient on the curve at an albumin quotient, which may be infinite. */
  public double at(double albuminQuotient) {
    return slope * Math.sqrt(albuminQuotient * albuminQuotient + bSquared) - c;
  }
}
