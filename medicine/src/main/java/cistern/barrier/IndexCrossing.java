package cistern.barrier;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import java.util.Arrays;
import java.util.List;

/**
 * Where a linear index limit and a hyperbolic quotient limit cross: between the crossings the two
 * ask for different amounts, so they can disagree (closed form; for index 0.7 and IgG at 1.189 and
 * 5.160 × 10⁻³).
 *
 * @param index the index limit
 * @param limit the hyperbolic limit
 */
public record IndexCrossing(double index, Hyperbola limit) {

  /** The crossing of the IgG index with the IgG limit. */
  public static IndexCrossing igg(Facts facts) {
    return new IndexCrossing(
        facts.number("igg-index.upper"), QuotientLimits.of(facts, Analyte.IGG).upper());
  }

  /** The crossing of the κ index with the κ limit. */
  public static IndexCrossing kappa(Facts facts) {
    return new IndexCrossing(
        facts.number("kappa-index.upper"), QuotientLimits.of(facts, Analyte.KAPPA).upper());
  }

  /** The positive albumin quotients at which index·QAlb equals the limit, ascending. */
  public List<Double> crossings() {
    double a = limit.slope() * limit.slope() - index * index;
    double half = index * limit.c();
    double c = limit.slope() * limit.slope() * limit.bSquared() - limit.c() * limit.c();
    double discriminant = half * half - a * c;
    if (discriminant < 0 || a == 0) {
      return List.of();
    }
    double root = Math.sqrt(discriminant);
    return Arrays.stream(new double[] {(half - root) / a, (half + root) / a})
        .filter(q -> q > 0)
        .sorted()
        .boxed()
        .toList();
  }
}
