package cistern.differential;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import java.util.OptionalDouble;

/**
 * The probability of a further event in a new cohort of one context, with and without bands: the
 * stated prior π is kept, q P₊ + (1 − q) P₋ = π, and bands move the odds by ψ, odds(P₊) = ψ
 * odds(P₋). A new cohort draws its own ln ψ ~ N(m, s²) and its own share with bands, logit q ~ N(a
 * + b logit π, c²); the prior is uniform over the stated range. Constants are facts, fitted from
 * the tables of cohorts (cohorts.tsv) by a script.
 */
final class CohortModel {

  private static final String PREFIX = "probability.";

  private final double logOddsRatio;
  private final double spread;
  private final Share share;

  /**
   * How the share with bands is drawn.
   *
   * @param intercept of logit q at even odds
   * @param slope of logit q on logit π
   * @param spread of logit q between cohorts
   * @param own the audited share of this site, which stands in place of the draw
   */
  private record Share(double intercept, double slope, double spread, OptionalDouble own) {

    double at(double prior, double deviation) {
      return own.orElseGet(
          () -> inverseLogit(intercept + slope * logit(prior) + spread * deviation));
    }
  }

  private CohortModel(double logOddsRatio, double spread, Share share) {
    this.logOddsRatio = logOddsRatio;
    this.spread = spread;
    this.share = share;
  }

  /** The model of a context that has constants. */
  static CohortModel of(CohortContext context, Facts facts) {
    String key = PREFIX + context.code() + ".log-odds-ratio";
    return new CohortModel(
        facts.number(key),
        facts.number(key + ".spread"),
        new Share(
            facts.number(PREFIX + "share.intercept"),
            facts.number(PREFIX + "share.slope"),
            facts.number(PREFIX + "share.spread"),
            own(facts)));
  }

  /** The share with bands that a site's own audit found, if local policy states it. */
  static OptionalDouble own(Facts facts) {
    return switch (facts.fact(PREFIX + "share.own").value()) {
      case FactValue.Figure share -> OptionalDouble.of(share.value());
      case FactValue.Word notSet -> OptionalDouble.empty();
      case FactValue.Unit notSet -> OptionalDouble.empty();
    };
  }

  /** The point of a new cohort: E[q P₊]/E[q] with bands, E[(1 − q) P₋]/E[1 − q] without. */
  double point(Prior prior, boolean isPositive) {
    double[] sums = new double[2];
    Quadrature.over(
        prior,
        (pi, z, weight) -> {
          double q = share.at(pi, z);
          double arm = isPositive ? q : 1 - q;
          sums[0] += weight * arm * expected(pi, q, isPositive);
          sums[1] += weight * arm;
        });
    return sums[0] / sums[1];
  }

  /** The mean share with bands over the stated range. */
  double share(Prior prior) {
    double[] sum = new double[1];
    Quadrature.over(prior, (pi, z, weight) -> sum[0] += weight * share.at(pi, z));
    return sum[0];
  }

  private double expected(double pi, double q, boolean isPositive) {
    double[] sum = new double[1];
    Quadrature.overNormal(
        (y, weight) -> {
          double psi = Math.exp(logOddsRatio + spread * y);
          double none = without(pi, q, psi);
          sum[0] += weight * (isPositive ? psi * none / (1 + (psi - 1) * none) : none);
        });
    return sum[0];
  }

  /** P₋ of one cohort, from its prior, its share with bands and its odds ratio. */
  static double without(double pi, double q, double psi) {
    double k = psi - 1;
    double b = q * psi + 1 - q - pi * k;
    return 2 * pi / (b + Math.sqrt(b * b + 4 * (1 - q) * k * pi));
  }

  /** The 2.5 and 97.5 % points of P₊ or P₋ over new cohorts. */
  Proportion.Ends interval95(Prior prior, boolean isPositive) {
    return new Proportion.Ends(
        Quadrature.inverse(t -> below(t, prior, isPositive), Quadrature.TAIL),
        Quadrature.inverse(t -> below(t, prior, isPositive), 1 - Quadrature.TAIL));
  }

  /** The chance that a new cohort's P lies below t. */
  double below(double t, Prior prior, boolean isPositive) {
    double[] sum = new double[1];
    Quadrature.over(
        prior,
        (pi, z, weight) -> {
          double q = share.at(pi, z);
          double arm = isPositive ? q : 1 - q;
          sum[0] += weight * below(t, pi, arm, isPositive);
        });
    return sum[0];
  }

  /** The same for one prior and one share of the arm; the other arm takes what the prior leaves. */
  private double below(double t, double pi, double arm, boolean isPositive) {
    if (pi <= arm * t) {
      return 1;
    }
    double other = (pi - arm * t) / (1 - arm);
    if (other >= 1) {
      return 0;
    }
    double apart = logit(t) - logit(other);
    return isPositive
        ? Quadrature.normal((apart - logOddsRatio) / spread)
        : Quadrature.normal((apart + logOddsRatio) / spread);
  }

  static double logit(double p) {
    return Math.log(p / (1 - p));
  }

  static double inverseLogit(double x) {
    return 1 / (1 + Math.exp(-x));
  }
}
