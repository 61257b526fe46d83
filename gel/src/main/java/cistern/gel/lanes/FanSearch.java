package cistern.gel.lanes;

/** Finds the fan along which the strips agree best: the columns summed along it have most edges. */
final class FanSearch {
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
    double most = sharpness(best);
    for (int i = -10; i <= 10; i++) {
      for (int j = -3; j <= 3; j++) {
        Fan next = fan(i * step, j * turn);
        double sharp = sharpness(next);
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
    double most = sharpness(best);
    double ds = step;
    double dt = turn;
    for (int halving = 0; halving < 4; halving++, ds /= 2, dt /= 2) {
      Fan around = best;
      for (int i = -1; i <= 1; i++) {
        for (int j = -1; j <= 1; j++) {
          Fan next = fan(around.slope() + i * ds, around.spread() + j * dt);
          double sharp = sharpness(next);
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
  private double sharpness(Fan fan) {
    float[] sum = sum(strips, fan);
    double sharp = 0;
    for (int x = 2; x < sum.length; x++) {
      double d = sum[x] - sum[x - 2];
      sharp += d * d;
    }
    return sharp;
  }

  /** The mean over the strips of the values along a fan, by column at mid-height. */
  static float[] sum(Strips strips, Fan fan) {
    float[] sum = new float[strips.columns()];
    for (int s = 0; s < strips.count(); s++) {
      double row = strips.row(s);
      for (int x = 0; x < sum.length; x++) {
        double at = (Strips.STEP * (x + 0.5) - 0.5);
        sum[x] += strips.at(s, (fan.column(at, row) + 0.5) / Strips.STEP - 0.5);
      }
    }
    for (int x = 0; x < sum.length; x++) {
      sum[x] /= strips.count();
    }
    return sum;
  }
}
