package cistern.uncertainty;

import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.fluid.GlucoseRatio;
import java.util.List;

/** The chance of a glucose ratio over a limit that falls in steps with the serum glucose. */
final class GlucoseLimit {

  /** How many standard deviations away a step counts as never reached. */
  private static final double NEVER = 7;

  /** How much more the serum may vary than the CSF before a fixed rule no longer resolves both. */
  private static final double MOST_UNLIKE = 2;

  /** A chance that is lost beside the others. */
  private static final double NEGLIGIBLE = 1e-9;

  /** Serum glucose at which the limit changes, rising. */
  private final double[] steps;

  /** The limit under the first step, between the steps, and over the last. */
  private final double[] limits;

  private GlucoseLimit(double[] steps, double[] limits) {
    this.steps = steps;
    this.limits = limits;
  }

  static GlucoseLimit of(GlucoseRatio rule) {
    List<Double> steps = rule.steps();
    double[] at = steps.stream().mapToDouble(Double::doubleValue).toArray();
    double[] limits = new double[at.length + 1];
    limits[0] = lower(rule.limits(0));
    for (int i = 0; i < at.length; i++) {
      limits[i + 1] = lower(rule.limits(at[i]));
    }
    return new GlucoseLimit(at, limits);
  }

  private static double lower(Limits limits) {
    return limits.within().map(Threshold::at).orElseThrow();
  }

  double chanceOver(LogNormal csf, LogNormal serum) {
    if (isFarFromSteps(serum)) {
      return csf.over(serum).chanceOver(limitAt(serum.median()));
    }
    return serum.sigma() > MOST_UNLIKE * csf.sigma()
        ? chanceNearStep(csf, serum)
        : chanceOverSteps(csf, serum);
  }

  /**
   * The chance over the first limit, and at every step what the fall of the limit adds: a ratio
   * between two limits with a serum over the step.
   */
  private double chanceOverSteps(LogNormal csf, LogNormal serum) {
    LogNormal ratio = csf.over(serum);
    double chance = ratio.chanceOver(limits[0]);
    for (int i = 0; i < steps.length; i++) {
      double from = (Math.log(steps[i]) - serum.mu()) / serum.sigma();
      double between = ratio.chanceBetween(limits[i + 1], limits[i]);
      if (Math.min(between, StandardNormal.below(-from)) > NEGLIGIBLE) {
        double high = csf.mu() - serum.mu() - Math.log(limits[i]);
        double low = csf.mu() - serum.mu() - Math.log(limits[i + 1]);
        chance +=
            NormalRule.integrate(
                z ->
                    StandardNormal.below((low - serum.sigma() * z) / csf.sigma())
                        - StandardNormal.below((high - serum.sigma() * z) / csf.sigma()),
                Math.max(-NEVER, from),
                NEVER);
      }
    }
    return chance;
  }

  private boolean isFarFromSteps(LogNormal serum) {
    for (double step : steps) {
      if (Math.abs(Math.log(step) - serum.mu()) < NEVER * serum.sigma()) {
        return false;
      }
    }
    return true;
  }

  private double limitAt(double serum) {
    int i = 0;
    while (i < steps.length && serum >= steps[i]) {
      i++;
    }
    return limits[i];
  }

  private double chanceNearStep(LogNormal csf, LogNormal serum) {
    NormalRule.Bends bends = NormalRule.Bends.none();
    for (double step : steps) {
      bends.with((Math.log(step) - serum.mu()) / serum.sigma(), 0);
    }
    for (double limit : limits) {
      double z = (csf.mu() - Math.log(limit) - serum.mu()) / serum.sigma();
      bends.with(z, csf.sigma() / serum.sigma());
    }
    return NormalRule.split(bends)
        .expectation(
            z -> {
              double value = serum.at(z);
              return csf.chanceOver(value * limitAt(value));
            });
  }
}
