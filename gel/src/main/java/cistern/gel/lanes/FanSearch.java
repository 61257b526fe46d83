package cistern.gel.lanes;

/** Finds the fan along which the strips agree best: the columns summed along it have most edges. */
final class FanSearch {
  /** Every so many strips are looked at in the coarse grid. */
  private static final int COARSE = 3;

  private final Strips strips;
  private final double width;
  private final double height;
  private final LaneLimits limits;

  FanSearch(Strips strips, double[] size, LaneLimits limits) {
    this.strips = strips;
    this.width = size[0];
    this.height = size[1];
    this.limits = limits;
  }

  /** The best fan of a coarse grid, refined by halving steps. */
  Fan search() {
    double step = limits.steepest() / 10;
    double turn = limits.fanning() / (width / 2) / 3;
    Fan best = fan(0, 0);
    double most = sharpness(best, COARSE);
    for (int i = -10; i <= 10; i++) {
      for (int j = -3; j <= 3; j++) {
        Fan next = fan(i * step, j * turn);
        double sharp = sharpness(next, COARSE);
        if (sharp > most * (1 + 1e-9)) {
          most = sharp;
          best = next;
        }
      }
    }
    return refine(best, step / 2, turn / 2);
  }

  private Fan refine(Fan start, double step, double turn) {
    Fan best = start;
    double most = sharpness(best, 1);
    double ds = step;
    double dt = turn;
    for (int halving = 0; halving < 4; halving++, ds /= 2, dt /= 2) {
      Fan around = best;
      for (int i = -1; i <= 1; i++) {
        for (int j = -1; j <= 1; j++) {
          Fan next = fan(around.slope() + i * ds, around.spread() + j * dt);
          double sharp = sharpness(next, 1);
          if (sharp > most * (1 + 1e-9)) {
            most = sharp;
            best = next;
          }
        }
      }
    }
    return best;
  }

  private Fan fan(double slope, double spread) {
    return new Fan(slope, spread, width / 2, height / 2);
  }

  /** Sum of the squared differences of the column means along a fan. */
  private double sharpness(Fan fan, int every) {
    float[] sum = sum(strips, fan, every);
    double sharp = 0;
    for (int x = 2; x < sum.length; x++) {
      double d = sum[x] - sum[x - 2];
      sharp += d * d;
    }
    return sharp;
  }

  /**
   * The mean over the strips of the values along a fan, by column at mid-height.
   *
   * @param every how many strips are gone on by, 1 for all
   */
  static float[] sum(Strips strips, Fan fan, int every) {
    float[] sum = new float[strips.columns()];
    int n = 0;
    for (int s = every / 2; s < strips.count(); s += every) {
      double row = strips.row(s);
      double first = (fan.column(0.5 * Strips.STEP - 0.5, row) + 0.5) / Strips.STEP - 0.5;
      double second = (fan.column(1.5 * Strips.STEP - 0.5, row) + 0.5) / Strips.STEP - 0.5;
      strips.addTo(sum, s, first, second - first);
      n++;
    }
    for (int x = 0; x < sum.length; x++) {
      sum[x] /= n;
    }
    return sum;
  }
}
