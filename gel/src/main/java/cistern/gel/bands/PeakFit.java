package cistern.gel.bands;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Explains a lane's filter answers as a sum of Gaussians: the largest unexplained answer becomes a
 * new one, those around it are fitted again, until nothing above the noise is left. Scratches and
 * bubbles are Gaussians below the ground, so that their flanks are not taken for bands.
 */
final class PeakFit {
  /**
   * Least depth of what lies below the ground, over the answers beside it: its own flanks answer
   * less than half of it, and between two bands the answer is never as deep as they are high.
   */
  private static final double DIP_SHARE = 1.2;

  private static final double YIELDING = 0.8;
  private final BandFilter filter;
  private final Limits limits;
  private final LaneTrace trace;
  private final float[] rest;
  private final List<Peak> peaks = new ArrayList<>();

  /**
   * @param visible least height over the noise
   * @param besideShare least height beside a stronger band, as a share of that one
   * @param besideReach how far, in σ, a stronger band counts as beside
   * @param nearest least distance of two bands in σ
   * @param narrowest least widening
   * @param widest greatest widening
   * @param split what makes one wide band two
   */
  record Limits(
      double visible,
      double besideShare,
      double besideReach,
      double nearest,
      double narrowest,
      double widest,
      SplitPeak.Limits split) {}

  PeakFit(LaneTrace trace, BandFilter filter, Limits limits) {
    this.trace = trace;
    this.filter = filter;
    this.limits = limits;
    this.rest = trace.answer().clone();
  }

  /** All that the trace shows from top to bottom, bands and what lies below the ground. */
  List<Peak> fit() {
    boolean[] closed = new boolean[rest.length];
    for (int i = 0; i < 90; i++) {
      int y = largest(closed);
      if (y < 0) {
        break;
      }
      Peak next = new Peak(y, rest[y], 1);
      take(next, -1);
      peaks.add(next);
      refit(y);
      closed[y] = true;
    }
    settle();
    if (new SplitPeak(limits.split(), filter.sigma()).split(this, peaks)) {
      settle();
    }
    peaks.removeIf(p -> p.height() == 0);
    peaks.sort(Comparator.comparingDouble(Peak::y));
    return List.copyOf(peaks);
  }

  private void settle() {
    for (int round = 0; round < 2; round++) {
      for (int i = 0; i < peaks.size(); i++) {
        peaks.set(i, improve(peaks.get(i)));
      }
    }
  }

  /** The row of the largest unexplained answer, or −1 as "nothing more". */
  private int largest(boolean[] closed) {
    int best = -1;
    double most = 0;
    for (int y = 1; y + 1 < rest.length; y++) {
      float v = rest[y];
      double size = Math.abs(v);
      if (size > most
          && isTurn(y)
          && !closed[y]
          && size > limits.visible * trace.noise()[y]
          && (v > 0 || isDip(y))
          && isFree(y, size)) {
        most = size;
        best = y;
      }
    }
    return best;
  }

  private boolean isTurn(int y) {
    float v = rest[y];
    return v > 0 ? v >= rest[y - 1] && v >= rest[y + 1] : v <= rest[y - 1] && v <= rest[y + 1];
  }

  private boolean isDip(int y) {
    float[] answer = trace.answer();
    int reach = (int) Math.ceil(limits.besideReach * filter.sigma());
    double most = 0;
    for (int i = Math.max(0, y - reach); i < Math.min(answer.length, y + reach + 1); i++) {
      most = Math.max(most, answer[i]);
    }
    return -answer[y] > DIP_SHARE * most;
  }

  private boolean isFree(int y, double height) {
    double sigma = filter.sigma();
    for (Peak p : peaks) {
      double d = Math.abs(p.y() - y) / sigma;
      boolean isBeside = d < limits.besideReach;
      if (d < limits.nearest || (isBeside && height < limits.besideShare * Math.abs(p.height()))) {
        return false;
      }
    }
    return true;
  }

  private void refit(int y) {
    double reach = 7 * filter.sigma();
    for (int round = 0; round < 3; round++) {
      for (int i = 0; i < peaks.size(); i++) {
        if (Math.abs(peaks.get(i).y() - y) < reach) {
          peaks.set(i, improve(peaks.get(i)));
        }
      }
    }
  }

  /** Adds a band's answer to what is left, or takes it away. */
  void take(Peak p, int sign) {
    int reach = (int) Math.ceil(5 * Math.hypot(filter.sigma() * p.widening(), filter.scale()));
    int from = Math.max(0, (int) p.y() - reach);
    int to = Math.min(rest.length, (int) p.y() + reach + 1);
    for (int y = from; y < to; y++) {
      rest[y] += (float) (sign * p.height() * filter.answer(y - p.y(), p.widening()));
    }
  }

  /** The squared answers that are left around a row. */
  double left(double row, double reach) {
    double sum = 0;
    for (int y = (int) Math.max(0, row - reach); y < Math.min(rest.length, row + reach + 1); y++) {
      sum += (double) rest[y] * rest[y];
    }
    return sum;
  }

  private Peak improve(Peak p) {
    return improve(p, YIELDING);
  }

  /**
   * One Gauss–Newton step of a band's height, place and width on what the others leave.
   *
   * @param stiffness how firmly the width holds to the gel's
   */
  Peak improve(Peak p, double stiffness) {
    take(p, 1);
    double sigma = filter.sigma();
    int reach = (int) Math.ceil(1.8 * Math.hypot(sigma * p.widening(), filter.scale()));
    int from = Math.max(0, (int) Math.round(p.y()) - reach);
    int to = Math.min(rest.length, (int) Math.round(p.y()) + reach + 1);
    double[][] a = new double[3][4];
    for (int y = from; y < to; y++) {
      double d = y - p.y();
      double phi = filter.answer(d, p.widening());
      double slope =
          p.height()
              * (filter.answer(d - 0.05, p.widening()) - filter.answer(d + 0.05, p.widening()))
              / 0.1;
      double wide =
          p.height() * (filter.answer(d, p.widening() * 1.01) - phi) / (0.01 * p.widening());
      double left = rest[y] - p.height() * phi;
      double[] j = {phi, slope, wide};
      for (int r = 0; r < 3; r++) {
        for (int s = 0; s < 3; s++) {
          a[r][s] += j[r] * j[s];
        }
        a[r][3] += j[r] * left;
      }
    }
    double ridge = stiffness * p.height() * p.height();
    a[1][1] += 1e-9 + 0.02 * a[1][1];
    a[2][2] += 1e-9 + ridge;
    a[0][0] += 1e-9;
    a[2][3] += ridge * (1 - p.widening());
    double[] step = LeastSquares.solve(a);
    Peak next =
        new Peak(
            p.y() + Math.clamp(step[1], -0.5 * sigma, 0.5 * sigma),
            p.height() > 0 ? Math.max(0, p.height() + step[0]) : Math.min(0, p.height() + step[0]),
            Math.clamp(
                p.widening() + Math.clamp(step[2], -0.15, 0.15), limits.narrowest, limits.widest));
    take(next, -1);
    return next;
  }
}
