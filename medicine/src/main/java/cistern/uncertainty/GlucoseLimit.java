package cistern.uncertainty;

import cistern.finding.Cut;
import cistern.finding.Limits;
import cistern.fluid.GlucoseRatio;
import java.util.List;

/** The chance of a glucose ratio over a limit that falls in steps with the serum glucose. */
final class GlucoseLimit {

  /** How many standard deviations away a step counts as never reached. */
  private static final double NEVER = 7;

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
    return limits.within().map(Cut::at).orElseThrow();
  }

  double chanceOver(LogNormal csf, LogNormal serum) {
    return isFarFromSteps(serum)
        ? csf.over(serum).chanceOver(limitAt(serum.median()))
        : chanceNearStep(csf, serum);
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
