package cistern.uncertainty;

/**
 * The quotient that total IgG explains, min(QIgG, Qlim): what an antibody index divides by. The
 * chance that either of the two is the smaller is known in closed form, so that an expectation is
 * one sum over QIgG and one over the albumin quotient.
 */
final class ExpectedQuotient {

  /** How unlike two standard deviations may be before a fixed rule no longer resolves both. */
  private static final double MOST_UNLIKE = 1.5;

  /** How many standard deviations apart QIgG and Qlim count as never crossing. */
  private static final double APART = 6;

  private static final double NEGLIGIBLE = 1e-9;

  /** The points of an expectation: logarithms of the explained quotient and their weights. */
  static final class Points {

    private final double[] logs;
    private final double[] weights;
    private int size;

    private Points(int most) {
      logs = new double[most];
      weights = new double[most];
    }

    /** Keeps a point unless its weight is lost beside the others. */
    private void add(double log, double weight) {
      if (weight > NEGLIGIBLE) {
        logs[size] = log;
        weights[size] = weight;
        size++;
      }
    }

    int size() {
      return size;
    }

    double log(int i) {
      return logs[i];
    }

    double weight(int i) {
      return weights[i];
    }

    /** The chance that an antibody's quotient over the explained one lies over an index. */
    double chanceOver(LogNormal specific, double index) {
      double level = specific.mu() - Math.log(index);
      double sum = 0;
      for (int i = 0; i < size; i++) {
        sum += weights[i] * StandardNormal.above(level - logs[i], specific.sigma());
      }
      return sum;
    }
  }

  private final LogNormal igg;
  private final Grid grid;
  private final LogNormal albumin;
  private final Curve.Limit limit;
  private final double limitLog;
  private final double limitSigma;

  /**
   * An explained quotient.
   *
   * @param igg QIgG
   * @param grid the albumin quotient
   * @param limit Qlim over the albumin quotient
   */
  ExpectedQuotient(LogNormal igg, Grid grid, Curve.Limit limit) {
    this.igg = igg;
    this.grid = grid;
    this.albumin = grid.variable();
    this.limit = limit;
    double x = albumin.median();
    double atMedian = limit.at(x);
    limitLog = Math.log(atMedian);
    limitSigma = albumin.sigma() * x * limit.slopeAt(x) / atMedian;
  }

  /** The largest standard deviation that the explained quotient has near its median. */
  double sigma() {
    return Math.max(igg.sigma(), limitSigma);
  }

  double medianLog() {
    return Math.min(igg.mu(), limitLog);
  }

  /** Whether fixed points resolve every step, given what the antibodies' quotients vary. */
  boolean isSmooth(double leastSigma) {
    double apart = Math.abs(igg.mu() - limitLog);
    boolean isCrossing = apart < APART * (igg.sigma() + limitSigma);
    boolean isAlike =
        igg.sigma() <= MOST_UNLIKE * limitSigma && limitSigma <= MOST_UNLIKE * igg.sigma();
    return sigma() <= MOST_UNLIKE * leastSigma && (isAlike || !isCrossing);
  }

  /** Fixed points. */
  Points points() {
    return points(Grid.line(igg), grid);
  }

  /** Points between which nothing bends: not QIgG near Qlim, and not the steps given. */
  Points splitPoints(Iterable<LogNormal> steps) {
    NormalRule.Bends ofIgg = NormalRule.Bends.none();
    NormalRule.Bends ofAlbumin = NormalRule.Bends.none();
    bend(ofIgg, ofAlbumin, new LogNormal(0, limitLog, limitSigma));
    bend(ofIgg, ofAlbumin, igg);
    steps.forEach(step -> bend(ofIgg, ofAlbumin, step));
    return points(
        igg.sigma() == 0 ? Grid.line(igg) : Grid.of(igg, NormalRule.split(ofIgg)),
        albumin.sigma() == 0 ? grid : Grid.of(albumin, NormalRule.split(ofAlbumin)));
  }

  private void bend(NormalRule.Bends ofIgg, NormalRule.Bends ofAlbumin, LogNormal step) {
    if (igg.sigma() > 0) {
      ofIgg.with((step.mu() - igg.mu()) / igg.sigma(), step.sigma() / igg.sigma());
    }
    double at = limit.inverse(Math.exp(step.mu()));
    if (limitSigma > 0 && at > 0) {
      double z = (Math.log(at) - albumin.mu()) / albumin.sigma();
      ofAlbumin.with(z, step.sigma() / limitSigma);
    }
  }

  private Points points(Grid overIgg, Grid overAlbumin) {
    Points points = new Points(overIgg.size() + overAlbumin.size());
    for (int i = 0; i < overIgg.size(); i++) {
      double chance = albumin.chanceOver(limit.inverse(overIgg.value(i)));
      points.add(overIgg.log(i), overIgg.weight(i) * chance);
    }
    for (int i = 0; i < overAlbumin.size(); i++) {
      double log = Math.log(limit.at(overAlbumin.value(i)));
      points.add(log, overAlbumin.weight(i) * chanceOfIggFrom(log));
    }
    return points;
  }

  private double chanceOfIggFrom(double log) {
    return igg.sigma() > 0
        ? StandardNormal.below((igg.mu() - log) / igg.sigma())
        : igg.mu() >= log ? 1 : 0;
  }

  /** The chance that the explained quotient's logarithm lies over a value. */
  double chanceOfLogOver(double log) {
    return albumin.chanceOver(limit.inverse(Math.exp(log)))
        * StandardNormal.above(igg.mu() - log, igg.sigma());
  }
}
